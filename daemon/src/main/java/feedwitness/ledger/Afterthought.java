package feedwitness.ledger;

import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quality.Qualification;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Indication;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What was said later of what a probe had indicated: a record that points at a range and adds flags
 * to it, while the range itself stays as it was kept.
 *
 * @param key of the record, {@link Evidence#key}
 * @param from first sample spoken of, by boot and sequence
 * @param through last
 * @param flags to add
 * @param words why, for people
 */
public record Afterthought(
    String key, PointName point, Place from, Place through, Flags flags, String words) {
  /** Kind of the records of quality tests. */
  public static final String KIND = "qualification";

  /**
   * A place in what was recorded.
   *
   * @param at wall time of that sample; empty if undated
   */
  public record Place(int boot, long sequence, Optional<Instant> at) implements Comparable<Place> {
    @Override
    public int compareTo(Place other) {
      return boot != other.boot
          ? Integer.compare(boot, other.boot)
          : Long.compare(sequence, other.sequence);
    }

    int compareTo(Stamp stamp) {
      return boot != stamp.boot()
          ? Integer.compare(boot, stamp.boot())
          : Long.compare(sequence, stamp.sequence());
    }
  }

  /** What quality tests say of earlier readings, as a record to keep. */
  public static EvidenceDraft draft(Qualification said, Stamp first, Stamp last) {
    Map<String, String> fields = new TreeMap<>();
    fields.put("boot", Integer.toString(said.boot()));
    fields.put("first", Long.toString(said.firstSequence()));
    fields.put("last", Long.toString(said.lastSequence()));
    fields.put(
        "flags",
        said.flags().list().stream().map(QualityFlag::code).collect(Collectors.joining(" ")));
    if (first.dated() && last.dated()) {
      fields.put("from", first.wall().toString());
      fields.put("to", last.wall().toString());
    }
    return EvidenceDraft.of(KIND, said.point().text(), fields);
  }

  /**
   * Reads such a record; flags a newer program knows are left out.
   *
   * @throws IllegalArgumentException if it makes no sense
   */
  public static Afterthought read(Evidence evidence) {
    try {
      int boot = Integer.parseInt(evidence.field("boot"));
      Flags flags =
          Arrays.stream(QualityFlag.values())
              .filter(
                  flag -> Arrays.asList(evidence.field("flags").split(" ")).contains(flag.code()))
              .reduce(Flags.NONE, Flags::with, Flags::with);
      return new Afterthought(
          evidence.key(),
          new PointName(evidence.subject()),
          new Place(boot, Long.parseLong(evidence.field("first")), time(evidence.field("from"))),
          new Place(boot, Long.parseLong(evidence.field("last")), time(evidence.field("to"))),
          flags,
          "What came after it gave reason to say of it: %s (record %s)."
              .formatted(
                  flags.list().stream().map(QualityFlag::words).collect(Collectors.joining("; ")),
                  evidence.key()));
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException("record %s: %s".formatted(evidence.key(), e), e);
    }
  }

  private static Optional<Instant> time(String text) {
    return text.isEmpty() ? Optional.empty() : Optional.of(Instant.parse(text));
  }

  /** Whether it speaks of a measurement: of what the probe said, nothing typed or imported. */
  public boolean covers(Measurement measurement) {
    return measurement.sample() instanceof Indication indication
        && indication.origin() == Indication.Origin.PROBE
        && measurement.point().equals(point)
        && from.compareTo(measurement.stamp()) <= 0
        && through.compareTo(measurement.stamp()) >= 0;
  }

  /** Whether it speaks of anything in {@code start} ≤ time < {@code end}, as far as dated. */
  public boolean touches(Instant start, Instant end) {
    return from.at().map(at -> at.isBefore(end)).orElse(false)
        && through.at().map(at -> !at.isBefore(start)).orElse(false);
  }
}
