package feedwitness.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quality.Flags;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Contact;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Reading;
import feedwitness.sample.Sample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Whatever is put into a chunk comes out of it, and nothing else ever does. */
class RunCodecTest {
  private static final PointName LINE = new PointName("line");

  @Provide
  Arbitrary<Double> numbers() {
    return Arbitraries.frequencyOf(
        net.jqwik.api.Tuple.of(6, Arbitraries.integers().between(0, 5_000).map(n -> n / 1000.0)),
        net.jqwik.api.Tuple.of(
            3, Arbitraries.integers().between(0, 5_000).map(n -> (double) (n / 100f))),
        net.jqwik.api.Tuple.of(2, Arbitraries.longs().map(Double::longBitsToDouble)),
        net.jqwik.api.Tuple.of(
            2,
            Arbitraries.of(
                Double.NaN,
                -0.0,
                0.0,
                Double.NEGATIVE_INFINITY,
                Double.longBitsToDouble(0x7ff8_dead_beef_0001L),
                Double.MAX_VALUE,
                9.2e18)));
  }

  @Provide
  Arbitrary<Kept> samples() {
    Arbitrary<Stamp> stamps =
        Combinators.combine(Arbitraries.longs(), Arbitraries.longs(), Arbitraries.longs())
            .as((sequence, nanos, wall) -> new Stamp(3, sequence, nanos, wall, true));
    Arbitrary<Sample> indications =
        Combinators.combine(
                stamps,
                numbers(),
                numbers(),
                Arbitraries.of(ConductivityUnit.class),
                Arbitraries.of(TemperatureUnit.class),
                Arbitraries.of(Indication.Origin.class),
                Arbitraries.of(Contact.class))
            .as(
                (stamp, conductivity, temperature, unit, degree, origin, contact) ->
                    new Indication(
                        LINE,
                        stamp,
                        new Reading(conductivity, unit, temperature, degree, contact),
                        origin));
    Arbitrary<Sample> absences =
        Combinators.combine(
                stamps,
                Arbitraries.of(Missing.Cause.class),
                Arbitraries.strings().ofMaxLength(40).filter(RunCodecTest::encodable))
            .as((stamp, cause, detail) -> new Missing(LINE, stamp, cause, detail));
    return Combinators.combine(
            Arbitraries.oneOf(indications, indications, indications, absences),
            Arbitraries.longs(),
            Arbitraries.integers().between(0, Integer.MAX_VALUE))
        .as((sample, flags, basis) -> new Kept(sample, new Flags(flags), basis));
  }

  /** A lone surrogate is no character, and no text in UTF-8. */
  private static boolean encodable(String text) {
    return java.nio.charset.StandardCharsets.UTF_8.newEncoder().canEncode(text);
  }

  private static Run run(List<Kept> samples) {
    return new Run(new RunKey(7, 3, true, 494_000), samples);
  }

  private static byte[] pack(Run run) {
    ByteSink sink = new ByteSink();
    RunCodec.write(sink, run);
    return Envelope.pack(sink.toArray());
  }

  private static Run unpack(byte[] packed) throws DamagedException {
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    return RunCodec.read(source, RunCodec.readKey(source), LINE);
  }

  /** Records compare doubles by value; the promise is bit for bit. */
  private static List<Long> bits(Run run) {
    List<Long> bits = new ArrayList<>();
    for (Kept kept : run.samples()) {
      if (kept.sample() instanceof Indication indication) {
        bits.add(Double.doubleToRawLongBits(indication.reading().conductivity()));
        bits.add(Double.doubleToRawLongBits(indication.reading().temperature()));
      }
    }
    return bits;
  }

  @Property(tries = 400)
  void anySamplesComeBackBitForBit(@ForAll("lists") List<Kept> samples) throws DamagedException {
    Run run = run(samples);
    Run back = unpack(pack(run));
    assertEquals(run, back);
    assertEquals(bits(run), bits(back));
  }

  @Provide
  Arbitrary<List<Kept>> lists() {
    return samples().list().ofMinSize(1).ofMaxSize(60);
  }

  @Property(tries = 400)
  void damagedOctetsAreReportedAndNeverASample(
      @ForAll("lists") List<Kept> samples, @ForAll long seed) {
    Random random = new Random(seed);
    byte[] packed = pack(run(samples));
    byte[] damaged = packed.clone();
    switch (random.nextInt(3)) {
      case 0 -> damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
      case 1 -> damaged = Arrays.copyOf(damaged, random.nextInt(damaged.length));
      default -> {
        int start = random.nextInt(damaged.length);
        int end = Math.min(damaged.length, start + 1 + random.nextInt(64));
        for (int i = start; i < end; i++) {
          damaged[i] = (byte) random.nextInt();
        }
      }
    }
    byte[] received = damaged;
    if (!Arrays.equals(packed, damaged)) {
      assertThrows(DamagedException.class, () -> unpack(received));
    }
  }

  @Property(tries = 1_000)
  void octetsThatWereNeverAChunkNeverHang(@ForAll byte[] noise) {
    ByteSource source = new ByteSource(noise);
    try {
      Run run = RunCodec.read(source, RunCodec.readKey(source), LINE);
      assertTrue(run.samples().size() <= Run.MAX_SAMPLES);
    } catch (DamagedException e) {
      assertTrue(!String.valueOf(e.getMessage()).isEmpty());
    }
  }

  @Property(tries = 200)
  void anyWholeNumbersComeBack(@ForAll long[] values) throws DamagedException {
    ByteSink sink = new ByteSink();
    LongColumn.write(sink, values);
    assertEquals(
        Arrays.toString(values),
        Arrays.toString(LongColumn.read(new ByteSource(sink.toArray()), values.length)));
  }
}
