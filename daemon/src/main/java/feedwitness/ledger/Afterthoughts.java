package feedwitness.ledger;

import feedwitness.check.ProbeOutOfPlace;
import feedwitness.check.RangeQualified;
import feedwitness.measurement.Measurement;
import feedwitness.quality.Flags;
import feedwitness.quantity.PointName;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import org.tinylog.Logger;

/**
 * All that was said later of what had been recorded, in memory: some a week, 200 octets each. For
 * any thread.
 */
public final class Afterthoughts {
  private static final int PAGE = 1_000;

  private final Map<PointName, List<Afterthought>> byPoint = new ConcurrentHashMap<>();

  /** Learns all that was kept, of whatever kind. */
  public void load(EvidenceHistory history) {
    load(history, Afterthought.KIND, Afterthought::read);
    load(history, RangeQualified.KIND, CheckAfterthoughts::read);
    load(history, ProbeOutOfPlace.KIND, CheckAfterthoughts::read);
  }

  /** Learns what was kept of a kind; a record that makes no sense is left out. */
  public void load(EvidenceHistory history, String kind, Function<Evidence, Afterthought> read) {
    long after = 0;
    while (true) {
      List<Evidence> records = history.evidence(EvidenceQuery.after(after, PAGE, kind));
      for (Evidence evidence : records) {
        after = evidence.id();
        try {
          add(read.apply(evidence));
        } catch (IllegalArgumentException e) {
          Logger.warn("record {} is left out, what it spoke of stays as recorded: {}", after, e);
        }
      }
      if (records.size() < PAGE) {
        return;
      }
    }
  }

  /** Takes note of one more. */
  public void add(Afterthought said) {
    byPoint.computeIfAbsent(said.point(), unused -> new CopyOnWriteArrayList<>()).add(said);
  }

  /** What was said of a measurement, in the order it was said. */
  public List<Afterthought> of(Measurement measurement) {
    return said(measurement.point()).stream().filter(each -> each.covers(measurement)).toList();
  }

  /** The measurement with all flags that were added later. */
  public Measurement apply(Measurement measurement) {
    return apply(measurement, said(measurement.point()));
  }

  /** For going through a history in its order: never asks one record twice. */
  static final class Cursor {
    private final List<Afterthought> all;
    private final List<Afterthought> open = new ArrayList<>();
    private int next;

    Cursor(List<Afterthought> said) {
      all = said.stream().sorted(Comparator.comparing(Afterthought::from)).toList();
    }

    Measurement apply(Measurement measurement) {
      while (next < all.size() && all.get(next).from().compareTo(measurement.stamp()) <= 0) {
        open.add(all.get(next++));
      }
      if (open.isEmpty()) {
        return measurement;
      }
      open.removeIf(each -> each.through().compareTo(measurement.stamp()) < 0);
      return Afterthoughts.apply(measurement, open);
    }
  }

  private static Measurement apply(Measurement measurement, List<Afterthought> said) {
    Flags flags = measurement.flags();
    for (Afterthought each : said) {
      if (each.covers(measurement)) {
        flags = flags.withLater(each.flags());
      }
    }
    return flags.equals(measurement.flags()) ? measurement : measurement.with(flags);
  }

  /** What speaks of a point at all within {@code from} ≤ time < {@code to}. */
  List<Afterthought> touching(PointName point, Instant from, Instant to) {
    return said(point).stream().filter(each -> each.touches(from, to)).toList();
  }

  List<Afterthought> said(PointName point) {
    return byPoint.getOrDefault(point, List.of());
  }
}
