package feedwitness.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Whatever the hours hold comes back; a year's course is made of nothing else. */
class DayCodecPropertiesTest {
  @Provide
  Arbitrary<List<Rollup>> days() {
    Arbitrary<Double> number =
        Arbitraries.oneOf(Arbitraries.floats().map(f -> (double) f), Arbitraries.just(Double.NaN));
    Arbitrary<Integer> count = Arbitraries.integers().between(0, 4_000);
    return Combinators.combine(
            Arbitraries.longs(), count, count, number, number, number, number, Arbitraries.longs())
        .as(
            (start, n, missing, mean, min, max, celsius, flags) ->
                new Rollup(start, n, missing, mean, min, max, n, celsius, flags))
        .list()
        .ofMaxSize(24);
  }

  @Property(tries = 300)
  void everyHourComesBack(@ForAll("days") List<Rollup> hours) throws DamagedException {
    assertEquals(hours, DayCodec.unpack(DayCodec.pack(hours)));
  }

  @Property(tries = 300)
  void everyColumnComesBack(@ForAll long[] values) throws DamagedException {
    ByteSink sink = new ByteSink();
    RunsColumn.write(sink, values);
    assertArrayEquals(values, RunsColumn.read(new ByteSource(sink.toArray()), values.length));
  }
}
