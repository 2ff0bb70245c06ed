package feedwitness.app;

import feedwitness.engine.FeedLineDesk;
import feedwitness.engine.LineReplay;
import feedwitness.publish.FindingsCsv;
import feedwitness.publish.RemoteService;
import feedwitness.quantity.PointName;
import feedwitness.site.FeedLine;
import feedwitness.site.Site;
import feedwitness.store.StoredHistory;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A feed line's watch over what is stored, through the service while it runs.
 *
 * @param from as written; nothing for the first reading
 * @param to as written; nothing for the last
 */
record StoredReplay(String line, @Nullable String from, @Nullable String to, boolean all) {

  /** What is printed. */
  record Answer(String table, String summary) {
    void print(PrintWriter out, PrintWriter err) throws IOException {
      out.print(table);
      out.flush();
      if (out.checkError()) {
        throw new IOException("standard output was closed before the last row");
      }
      err.println(summary);
    }
  }

  /**
   * Asks service or file.
   *
   * @throws IllegalArgumentException if a time is not understood
   */
  Answer ask(Whereabouts.Found found) throws IOException {
    return found instanceof Whereabouts.Found.Running running
        ? running(running.service())
        : stopped((Whereabouts.Found.Stopped) found);
  }

  private Answer running(RemoteService service) throws IOException {
    ZoneId zone = service.zone();
    try (InputStream in = service.replay(line, start(zone), end(zone), all)) {
      String table = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      long findings = table.lines().count() - 1;
      return new Answer(table, "%d findings in what is stored of %s.".formatted(findings, line));
    }
  }

  private Answer stopped(Whereabouts.Found.Stopped stopped) throws IOException {
    Site site = stopped.config().site();
    FeedLine known =
        site.feedLines().stream()
            .filter(each -> each.name().text().equals(line))
            .findFirst()
            .orElseThrow(() -> new IOException(unknown(site)));
    StoredHistory.Opening opening = StoredHistory.open(stopped.config().storeDirectory());
    if (opening instanceof StoredHistory.Opening.Refused refused) {
      throw new IOException(refused.message());
    }
    try (StoredHistory history = ((StoredHistory.Opening.Opened) opening).history()) {
      FeedLineDesk.Replayed replayed =
          new LineReplay(known, site, history, history).run(start(site.zone()), end(site.zone()));
      Optional<String> damage = history.damage();
      if (damage.isPresent()) {
        throw new IOException(damage.get());
      }
      long findings =
          replayed.findings().stream().filter(each -> all || FindingsCsv.isTold(each)).count();
      return new Answer(
          FindingsCsv.table(replayed.findings(), all),
          "%s %d findings.".formatted(replayed.summary(), findings));
    }
  }

  private String unknown(Site site) {
    List<String> names =
        site.feedLines().stream().map(FeedLine::name).map(PointName::text).toList();
    return names.isEmpty()
        ? "there is no feed line '%s'; write a [[feed-line]] table in the configuration"
            .formatted(line)
        : "there is no feed line '%s'; there are: %s"
            .formatted(line, names.stream().collect(Collectors.joining(", ")));
  }

  private Optional<Instant> start(ZoneId zone) {
    Optional<Instant> start =
        Optional.ofNullable(from).map(text -> TimeOption.parse("--from", text, zone));
    if (start.isPresent() && end(zone).filter(end -> !start.get().isBefore(end)).isPresent()) {
      throw new IllegalArgumentException("--from %s is not before --to %s".formatted(from, to));
    }
    return start;
  }

  private Optional<Instant> end(ZoneId zone) {
    return Optional.ofNullable(to).map(text -> TimeOption.parse("--to", text, zone));
  }
}
