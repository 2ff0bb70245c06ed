package feedwitness.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quality.Flags;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What an hour of 1 Hz costs; and that every named thing has a number in the file. */
class ChunkSizeTest {
  private static byte[] hour(double resolution, boolean asFloat) {
    Random random = new Random(11);
    List<Kept> samples = new ArrayList<>();
    double level = 1.5;
    for (int i = 0; i < 3_600; i++) {
      level += random.nextGaussian() * 0.0005;
      double value = Math.rint(level / resolution) * resolution;
      double printed = Math.rint(value * 1_000) / 1_000;
      long millis = 1_000L * i + random.nextInt(4);
      Stamp stamp = new Stamp(1, 1 + 4L * i, millis * 1_000_000, 1_780_000_000_000L + millis, true);
      Reading reading =
          new Reading(
              asFloat ? (float) printed : printed,
              ConductivityUnit.MILLISIEMENS_PER_CM,
              Math.rint((19 + Math.sin(i / 600.0)) * 10) / 10,
              TemperatureUnit.CELSIUS);
      samples.add(
          new Kept(
              new Indication(Nursery.LINE, stamp, reading, Indication.Origin.PROBE),
              Flags.NONE,
              1));
    }
    ByteSink sink = new ByteSink();
    RunCodec.write(sink, new Run(new RunKey(1, 1, true, 494_444), samples));
    return Envelope.pack(sink.toArray());
  }

  @Test
  void anHourOfAPrintingProbeTakesLessThanTwoOctetsAReading() {
    assertTrue(hour(0.001, false).length < 2 * 3_600, () -> hour(0.001, false).length + " octets");
  }

  @Test
  void anHourOfAFloatingPointProbeTakesNoMoreThanOneThatPrints() {
    assertEquals(hour(0.001, false).length, hour(0.001, true).length, 32);
  }

  @Test
  void everyUnitAndCauseHasANumberOfItsOwnInTheFile() throws DamagedException {
    for (ConductivityUnit unit : ConductivityUnit.values()) {
      assertEquals(unit, Codes.conductivity(Codes.of(unit)));
    }
    for (TemperatureUnit unit : TemperatureUnit.values()) {
      assertEquals(unit, Codes.temperature(Codes.of(unit)));
    }
    for (Missing.Cause cause : Missing.Cause.values()) {
      assertEquals(cause, Codes.cause(cause.code()));
    }
    assertEquals(
        Missing.Cause.values().length,
        Arrays.stream(Missing.Cause.values()).mapToInt(Missing.Cause::code).distinct().count());
  }

  @Test
  void chunksOfAPointLieInTheOrderOfTimeWhateverTheYear() {
    long[] hours = {ChunkKey.MIN_HOUR, -1, 0, 494_444, ChunkKey.MAX_HOUR};
    long before = -1;
    for (int point = 0; point < 3; point++) {
      for (long hour : hours) {
        for (int ordinal : new int[] {0, 1, ChunkKey.MAX_ORDINAL}) {
          long key = ChunkKey.of(point, hour, ordinal);
          assertTrue(key > before);
          assertEquals(hour, ChunkKey.hour(key));
          assertEquals(ordinal, ChunkKey.ordinal(key));
          before = key;
        }
      }
    }
  }
}
