package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.AlarmRecords;
import feedwitness.engine.LiveView;
import feedwitness.ledger.Evidence;
import feedwitness.ledger.EvidenceHistory;
import feedwitness.ledger.EvidenceQuery;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What happened to alarms as a feed (RFC 4287) with its archives (RFC 5005, section 4). An archive
 * holds the alarms among {@link #BLOCK} records that follow one another, so it never changes once
 * the last of them is written.
 */
final class AtomRoutes {
  static final String PATH = "/alarms.atom";
  static final String ARCHIVE = "/alarms/archive/";

  /** Records of all kinds to an archive. */
  static final int BLOCK = 500;

  private static final int LEAST_ENTRIES = 20;
  private static final String MEDIA_TYPE = "application/atom+xml";

  private final LiveView live;
  private final AlarmDesk desk;
  private final EvidenceHistory history;

  AtomRoutes(LiveView live, AlarmDesk desk, EvidenceHistory history) {
    this.live = live;
    this.desk = desk;
    this.history = history;
  }

  void current(Context context) {
    long complete = complete();
    List<Evidence> entries = new ArrayList<>();
    for (Evidence record :
        history.evidence(EvidenceQuery.newest(BLOCK + LEAST_ENTRIES, AlarmRecords.KIND))) {
      if (entries.size() < LEAST_ENTRIES || record.id() > complete * BLOCK) {
        entries.add(record);
      }
    }
    context.header("Cache-Control", "no-cache");
    write(context, entries, new AtomFeed.Place(PATH, false, archiveBefore(complete + 1)));
  }

  void archive(Context context) {
    String name = context.pathParam("name");
    OptionalLong number =
        name.matches("[0-9]{1,12}\\.atom")
            ? OptionalLong.of(Long.parseLong(name.substring(0, name.length() - 5)))
            : OptionalLong.empty();
    if (number.isEmpty() || number.getAsLong() < 1 || number.getAsLong() > complete()) {
      throw Problem.of(
              404,
              "there is no archive %s; %s links to those there are"
                  .formatted(Quoted.of(name), PATH))
          .exception();
    }
    long block = number.getAsLong();
    EvidenceQuery query =
        new EvidenceQuery(
            Set.of(AlarmRecords.KIND),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            (block - 1) * BLOCK,
            block * BLOCK + 1,
            EvidenceQuery.Order.NEWEST_FIRST,
            BLOCK);
    context.header("Cache-Control", "private, max-age=86400");
    write(
        context,
        history.evidence(query),
        new AtomFeed.Place(address(block), true, archiveBefore(block)));
  }

  /** How many archives there are: blocks whose last record is on disk. */
  private long complete() {
    List<Evidence> newest = history.evidence(EvidenceQuery.newest(1));
    return newest.isEmpty() ? 0 : newest.get(0).id() / BLOCK;
  }

  private static Optional<String> archiveBefore(long block) {
    return block > 1 ? Optional.of(address(block - 1)) : Optional.empty();
  }

  private static String address(long block) {
    return ARCHIVE + block + ".atom";
  }

  private void write(Context context, List<Evidence> entries, AtomFeed.Place place) {
    String base = context.scheme() + "://" + context.host();
    AtomFeed feed =
        new AtomFeed(desk.identity(), live.site().name(), base, live.health().startedAt());
    Answers.write(context, MEDIA_TYPE, feed.write(place, entries));
  }
}
