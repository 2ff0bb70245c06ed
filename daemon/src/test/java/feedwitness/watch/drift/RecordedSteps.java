package feedwitness.watch.drift;

import feedwitness.quantity.PointName;
import feedwitness.site.FeedLine;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Steps of −7.5 % that last 23 minutes, put into a recording of one-minute water: a CSV whose
 * columns begin with the time, the temperature in °C and the conductivity at 25 °C in µS/cm.
 */
final class RecordedSteps {
  private static final int LENGTH = 23;
  private static final double SIZE = 0.925;
  private static final int DAY = 1440;
  private static final long IN_TIME = 10 * 60_000L;

  private final long[] millis;
  private final double[] values;
  private final double[] celsius;

  private RecordedSteps(long[] millis, double[] values, double[] celsius) {
    this.millis = millis;
    this.values = values;
    this.celsius = celsius;
  }

  /**
   * How it went.
   *
   * @param steps put in
   * @param inTime found within ten minutes
   * @param meanDelayMinutes of those found
   * @param others findings that belong to no step
   * @param days of the recording
   */
  record Score(int steps, int inTime, double meanDelayMinutes, int others, double days) {}

  static RecordedSteps read(Path recording) throws IOException {
    List<String> rows = Files.readAllLines(recording);
    int count = rows.size() - 1;
    RecordedSteps steps = new RecordedSteps(new long[count], new double[count], new double[count]);
    for (int i = 0; i < count; i++) {
      String[] cells = rows.get(i + 1).split(",", -1);
      steps.millis[i] = Instant.parse(cells[0]).toEpochMilli();
      steps.celsius[i] = number(cells[1]);
      steps.values[i] = number(cells[2]);
    }
    return steps;
  }

  private static double number(String cell) {
    return cell.matches("[0-9.]+") ? Double.parseDouble(cell) : Double.NaN;
  }

  /** Plays the recording with steps put in by a seed; none with seed 0. */
  Score play(long seed) {
    double[] water = Arrays.copyOf(values, values.length);
    List<Integer> begins = seed == 0 ? List.of() : put(water, new Random(seed));
    DriftWatch watch = new DriftWatch(FeedLine.ofPoint(new PointName("recording")));
    boolean[] found = new boolean[begins.size()];
    int inTime = 0;
    int other = 0;
    double delays = 0;
    for (int i = 0; i < water.length; i++) {
      if (!(water[i] > 0)) {
        continue;
      }
      for (DriftFinding finding :
          watch.line(
              1, millis[i] * 1_000_000, millis[i], water[i] / 1000, Double.NaN, celsius[i])) {
        if (finding.stage().compareTo(Stage.NOTICE) < 0) {
          continue;
        }
        int which = stepAt(begins, i);
        if (which < 0 || found[which]) {
          other++;
          continue;
        }
        found[which] = true;
        long late = millis[i] - millis[begins.get(which)];
        delays += late / 60_000.0;
        inTime += late <= IN_TIME ? 1 : 0;
      }
    }
    return new Score(
        begins.size(), inTime, delays / Math.max(1, inTime), other, water.length / (double) DAY);
  }

  private static int stepAt(List<Integer> begins, int minute) {
    for (int k = 0; k < begins.size(); k++) {
      if (minute >= begins.get(k) && minute < begins.get(k) + LENGTH) {
        return k;
      }
    }
    return -1;
  }

  private static List<Integer> put(double[] water, Random random) {
    List<Integer> begins = new ArrayList<>();
    for (int at = DAY + 400; at + LENGTH + 10 < water.length; at += 400 + random.nextInt(400)) {
      boolean whole = true;
      for (int i = at - 60; i < at + LENGTH + 7; i++) {
        whole &= !Double.isNaN(water[i]);
      }
      if (whole) {
        begins.add(at);
        for (int i = at; i < at + LENGTH; i++) {
          water[i] *= SIZE;
        }
      }
    }
    return begins;
  }
}
