package feedwitness.quality;

import java.util.ArrayList;
import java.util.List;

/**
 * Learns which probes of a place are in the same water, as two in one tank: those whose
 * temperatures kept the same distance for a day in which the water's own went up and down. Nobody
 * has to say so, and probes that part for a day for good, because one was moved, stop being
 * neighbours. Temperatures in °C, times in s of any one origin. For one thread.
 */
public final class Neighbours {
  /** Pairs grow with the square of it. */
  private static final int MOST_PROBES = 8;

  private static final int KEPT = 96;
  private static final double KEEP_EVERY_SECONDS = 900;
  private static final double DAY_SECONDS = 86_400;
  private static final double FRESH_SECONDS = 150;
  private static final double LIKE_KELVIN = 1.5;
  private static final double PARTED_KELVIN = 1;
  private static final double MOVED_KELVIN = 1.5;

  private final List<Probe> probes = new ArrayList<>();

  /** One more probe; it has no neighbours if there are very many. */
  public Probe join() {
    Probe probe = new Probe();
    if (probes.size() < MOST_PROBES) {
      for (Probe other : probes) {
        Pair pair = new Pair(probe, other);
        other.pairs.add(pair);
        probe.pairs.add(pair);
      }
      probes.add(probe);
    }
    return probe;
  }

  /** It is there no more. */
  public void leave(Probe probe) {
    probes.remove(probe);
    for (Probe other : probes) {
      other.pairs.removeIf(pair -> pair.of(probe));
    }
    probe.pairs.clear();
  }

  /** A probe among the others. */
  public static final class Probe {
    private final List<Pair> pairs = new ArrayList<>();
    private double lastSeconds = Double.NEGATIVE_INFINITY;
    private double lastCelsius = Double.NaN;

    /**
     * What this probe would say if it agreed with that neighbour that is nearest to it, less what
     * they always differ by: NaN if none is known, or none was heard for two minutes. The nearest,
     * so that of three in the same water only the one that parted is unlike the others.
     */
    public double neighbour(double seconds, double celsius) {
      double nearest = Double.NaN;
      for (Pair pair : pairs) {
        double says = pair.neighbourOf(this, seconds);
        if (!(Math.abs(says - celsius) >= Math.abs(nearest - celsius)) && !Double.isNaN(says)) {
          nearest = says;
        }
      }
      return nearest;
    }

    /** What it said; NaN if that is not to be believed for reasons of its own. */
    public void heard(double seconds, double celsius) {
      lastSeconds = seconds;
      lastCelsius = celsius;
      if (!Double.isNaN(celsius)) {
        for (Pair pair : pairs) {
          pair.heard(seconds);
        }
      }
    }

    private boolean fresh(double seconds) {
      return !Double.isNaN(lastCelsius) && Math.abs(seconds - lastSeconds) <= FRESH_SECONDS;
    }
  }

  private static final class Pair {
    private final Probe one;
    private final Probe other;
    private final Recent apart = new Recent(KEPT);
    private final Recent water = new Recent(KEPT);
    private double lastKept = Double.NEGATIVE_INFINITY;
    private double partedSince = Double.NaN;
    private boolean alike;

    Pair(Probe one, Probe other) {
      this.one = one;
      this.other = other;
    }

    boolean of(Probe probe) {
      return probe == one || probe == other;
    }

    /** NaN if they are no neighbours, or nothing fresh is known. */
    double neighbourOf(Probe probe, double seconds) {
      Probe beside = probe == one ? other : one;
      if (!alike || !beside.fresh(seconds)) {
        return Double.NaN;
      }
      return beside.lastCelsius + (probe == one ? apart.median() : -apart.median());
    }

    void heard(double seconds) {
      if (seconds - lastKept < KEEP_EVERY_SECONDS && seconds >= lastKept) {
        return;
      }
      if (!one.fresh(seconds) || !other.fresh(seconds)) {
        return;
      }
      lastKept = seconds;
      double difference = one.lastCelsius - other.lastCelsius;
      if (alike && Math.abs(difference - apart.median()) > PARTED_KELVIN) {
        parted(seconds);
        return;
      }
      partedSince = Double.NaN;
      apart.add(0, seconds, difference);
      water.add(0, seconds, one.lastCelsius);
      alike =
          apart.full() && spread(apart) <= LIKE_KELVIN && (alike || spread(water) >= MOVED_KELVIN);
    }

    /** What parted is not learnt from, for a day: one of them may have failed. */
    private void parted(double seconds) {
      if (Double.isNaN(partedSince) || seconds < partedSince) {
        partedSince = seconds;
      }
      if (seconds - partedSince >= DAY_SECONDS) {
        apart.clear();
        water.clear();
        alike = false;
        partedSince = Double.NaN;
      }
    }

    private static double spread(Recent kept) {
      return kept.quantile(0.95) - kept.quantile(0.05);
    }
  }
}
