package feedwitness.publish;

import feedwitness.engine.AlarmRecords;
import feedwitness.engine.JournalNote;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which entries of the journal are asked for, newest first.
 *
 * @param records which of them, by all but the block
 * @param block empty for all
 */
record JournalQuery(EvidenceQuery records, String block, int limit) {
  static final Set<String> KINDS =
      Set.of(AlarmRecords.KIND, JournalNote.KIND, JournalJson.FEEDING, JournalJson.STRENGTH);
  private static final List<String> KNOWN =
      List.of("point", "block", "kind", "from", "to", "before", "limit");
  private static final int MOST = 200;
  private static final int USUAL = 50;
  private static final Instant EVER = Instant.parse("9999-01-01T00:00:00Z");

  /**
   * Reads the parameters of an address.
   *
   * @throws ProblemException status 400 naming every parameter at fault
   */
  static JournalQuery read(Map<String, List<String>> parameters) {
    List<Problem.FieldError> errors = new ArrayList<>();
    CourseQuery.refuseUnknown(parameters, KNOWN, errors);
    Set<String> kinds = kinds(parameters.getOrDefault("kind", List.of()), errors);
    Optional<Instant> from = CourseQuery.time("from", parameters, errors);
    Optional<Instant> to = CourseQuery.time("to", parameters, errors);
    long before = number("before", parameters, Long.MAX_VALUE, Long.MAX_VALUE, errors);
    int limit = (int) number("limit", parameters, MOST, USUAL, errors);
    if (from.isPresent() && to.isPresent() && !from.get().isBefore(to.get())) {
      errors.add(
          new Problem.FieldError(
              "from", "from is not before to; give a start that lies before the end"));
    }
    if (!errors.isEmpty()) {
      throw new Problem(400, errors.get(0).message(), errors).exception();
    }
    EvidenceQuery query = EvidenceQuery.newest(limit, kinds.toArray(String[]::new)).before(before);
    if (from.isPresent() || to.isPresent()) {
      query = query.within(from.orElse(Instant.EPOCH), to.orElse(EVER));
    }
    List<String> point = parameters.getOrDefault("point", List.of());
    if (!point.isEmpty()) {
      query = query.about(point.get(0));
    }
    List<String> block = parameters.getOrDefault("block", List.of(""));
    return new JournalQuery(query, block.get(0), limit);
  }

  private static Set<String> kinds(List<String> wanted, List<Problem.FieldError> errors) {
    Set<String> kinds = new HashSet<>();
    for (String kind : wanted) {
      if (!KINDS.contains(kind) || kind.equals(JournalJson.STRENGTH)) {
        errors.add(
            new Problem.FieldError(
                "kind", "kind %s is not alarm, note or feeding".formatted(Quoted.of(kind))));
      }
      kinds.add(kind);
      if (kind.equals(JournalJson.FEEDING)) {
        kinds.add(JournalJson.STRENGTH);
      }
    }
    return kinds.isEmpty() ? KINDS : kinds;
  }

  private static long number(
      String name,
      Map<String, List<String>> parameters,
      long most,
      long absent,
      List<Problem.FieldError> errors) {
    List<String> values = parameters.getOrDefault(name, List.of());
    if (values.isEmpty()) {
      return absent;
    }
    String text = values.get(0);
    if (values.size() == 1 && text.matches("[0-9]{1,18}")) {
      long number = Long.parseLong(text);
      if (number >= 1 && number <= most) {
        return number;
      }
    }
    errors.add(
        new Problem.FieldError(
            name,
            "%s %s is not one whole number from 1 to %d".formatted(name, Quoted.of(text), most)));
    return absent;
  }

  /** The page of entries, and where the next begins. */
  JournalJson.Page from(EvidenceHistory history) {
    List<Evidence> page = new ArrayList<>();
    EvidenceQuery query = records;
    // a block has no index of its own: so many records are looked through at most
    int left = EvidenceQuery.MOST;
    while (page.size() < limit && left > 0) {
      List<Evidence> some = history.evidence(query);
      for (Evidence record : some) {
        if (page.size() < limit && (block.isEmpty() || block.equals(record.field("block")))) {
          page.add(record);
        }
      }
      if (some.size() < query.limit()) {
        return new JournalJson.Page(page.stream().map(JournalJson::of).toList(), null);
      }
      left -= some.size();
      query = query.before(some.get(some.size() - 1).id());
    }
    long next = page.isEmpty() ? query.beforeId() : page.get(page.size() - 1).id();
    return new JournalJson.Page(page.stream().map(JournalJson::of).toList(), next);
  }
}
