package feedwitness.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** In the beaker, back in the tank, and in a bucket without a word. */
class PlaceTest {
  private final Bench bench = new Bench();

  private BeakerReturn afterCheck(double lastStandard) {
    CheckSession session = bench.round(bench.begin(Bench.plain()));
    bench.keep(session.finish("the grower", bench.now()));
    return new BeakerReturn(session.started(), lastStandard, CheckLimits.USUAL, bench.now());
  }

  private Optional<ProbeReturned> read(BeakerReturn back, double at25, int times) {
    for (int i = 0; i < times; i++) {
      bench.wait(Duration.ofSeconds(5));
      Optional<ProbeReturned> record = back.reading(bench.stamp(), at25);
      if (record.isPresent()) {
        return record;
      }
    }
    return Optional.empty();
  }

  @Test
  void comesBackByItselfWhenReadingsLookLikeTheTank() {
    BeakerReturn back = afterCheck(2.77);
    assertEquals(Optional.empty(), read(back, 2.77, 50));
    assertEquals(Optional.empty(), read(back, 0.0, 5));
    assertTrue(back.inBeaker());
    ProbeReturned record = read(back, 1.55, 50).orElseThrow();
    assertEquals(ProbeReturned.How.READINGS_LOOK_LIKE_BEFORE, record.how());
    assertEquals(Optional.of(Bench.BEFORE), record.from());
    assertFalse(back.inBeaker());
  }

  @Test
  void doesNotTakeTheBeakerForTheTank() {
    BeakerReturn back = afterCheck(1.413);
    assertEquals(Optional.empty(), read(back, 1.41, 100));
    read(back, 0.0, 3);
    assertTrue(read(back, 1.52, 20).isPresent());
  }

  @Test
  void isNotHeldBackByOneLikeReading() {
    BeakerReturn back = afterCheck(2.77);
    for (int i = 0; i < 20; i++) {
      assertEquals(Optional.empty(), read(back, i % 2 == 0 ? 1.5 : 0.4, 1));
    }
  }

  @Test
  void comesBackAtATimeLimitWithANote() {
    BeakerReturn back = afterCheck(2.77);
    read(back, 2.77, 10);
    bench.wait(Duration.ofMinutes(61));
    ProbeReturned record = back.tick(bench.now()).orElseThrow();
    assertEquals(ProbeReturned.How.TIME_LIMIT, record.how());
    assertTrue(record.note().contains("look whether it is"), record::note);
    assertEquals(Optional.empty(), back.said("the grower", bench.now()));
  }

  @Test
  void takesAPersonsWord() {
    BeakerReturn back = afterCheck(2.77);
    assertEquals(ProbeReturned.How.SAID, back.said("the grower", bench.now()).orElseThrow().how());
  }

  private record Seen(double at25, double celsius) {}

  private List<ProbeOutOfPlace> watch(PlaceWatch watch, List<Seen> readings) {
    List<ProbeOutOfPlace> found = new ArrayList<>();
    for (Seen seen : readings) {
      bench.wait(Duration.ofSeconds(10));
      Stamp stamp = bench.stamp();
      watch.reading(stamp, seen.at25(), seen.celsius()).ifPresent(found::add);
    }
    return found;
  }

  private static List<Seen> times(int n, double at25, double celsius) {
    List<Seen> readings = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      readings.add(new Seen(at25 * (1 + 0.003 * Math.sin(i)), celsius));
    }
    return readings;
  }

  @Test
  void recognisesAProbeLiftedIntoAStandardWithoutAWord() {
    PlaceWatch watch = new PlaceWatch(Bench.TANK, Bench.SHELF, false);
    watch(watch, times(40, 1.5, 16));
    watch(watch, times(4, 0.0, 18));
    watch(watch, times(30, 2.76, 21));
    assertTrue(watch.away().orElseThrow().contains("like KCl 0.02 mol/L"));
    watch(watch, times(3, 0.0, 18));
    List<ProbeOutOfPlace> found = watch(watch, times(20, 1.51, 16));
    assertEquals(1, found.size());
    assertTrue(found.get(0).sure());
    assertEquals(1040, found.get(0).from().sequence());
    assertEquals(Optional.empty(), watch.away());
  }

  @Test
  void doesNotDecideWhileAProbePassesTheLevelItCameFrom() {
    PlaceWatch watch = new PlaceWatch(Bench.TANK, Bench.SHELF, false);
    watch(watch, times(40, 1.5, 16));
    watch(watch, times(4, 0.0, 18));
    for (double rising = 0.5; rising < 2.76; rising += 0.2) {
      watch(watch, times(1, rising, 19));
    }
    watch(watch, times(30, 2.76, 21));
    assertTrue(watch.away().orElseThrow().contains("like KCl 0.02 mol/L"));
  }

  @Test
  void aDropHeldInTheCellDoesNotChangeWhatIsKnownOfThePlace() {
    PlaceWatch watch = new PlaceWatch(Bench.TANK, Bench.SHELF, false);
    watch(watch, times(60, 1.5, 16));
    for (double drop = 0.75; drop > 0.03; drop *= 0.85) {
      watch(watch, times(1, drop, 18));
    }
    watch(watch, times(30, 2.76, 21));
    assertTrue(watch.away().orElseThrow().contains("like KCl 0.02 mol/L"));
    List<ProbeOutOfPlace> found = watch(watch, times(20, 1.51, 16));
    assertEquals(1060, found.get(0).from().sequence(), "the last reading in its place");
  }

  @Test
  void aDropIsForgottenWhenTheProbeComesBack() {
    PlaceWatch watch = new PlaceWatch(Bench.TANK, Bench.SHELF, false);
    watch(watch, times(60, 1.5, 16));
    watch(watch, times(17, 0.3, 18));
    watch(watch, times(4, 0.0, 18));
    watch(watch, times(25, 1.5, 16));
    watch(watch, times(1, 0.1, 18));
    watch(watch, times(30, 2.76, 21));
    assertTrue(watch.away().orElseThrow().contains("like KCl 0.02 mol/L"));
  }

  @Test
  void isLessSureOfABucketAtTheSameTemperature() {
    PlaceWatch watch = new PlaceWatch(Bench.TANK, Bench.SHELF, false);
    watch(watch, times(40, 1.5, 16));
    watch(watch, times(4, 0.0, 16));
    watch(watch, times(30, 0.46, 16.2));
    List<ProbeOutOfPlace> found = watch(watch, times(20, 1.51, 16));
    assertEquals(List.of(false), found.stream().map(ProbeOutOfPlace::sure).toList());
  }

  @Test
  void doesNotMistakeAFeedForABucket() {
    PlaceWatch watch = new PlaceWatch(Bench.TANK, Bench.SHELF, false);
    List<Seen> day = new ArrayList<>();
    day.addAll(times(40, 1.5, 16));
    day.addAll(times(40, 0.46, 14));
    day.addAll(times(40, 1.95, 15));
    day.addAll(times(5, 0.0, 15));
    day.addAll(times(40, 1.95, 15));
    assertEquals(List.of(), watch(watch, day));
    assertEquals(Optional.empty(), watch.away());
  }

  @Test
  void knowsThatALineRunsDry() {
    PlaceWatch watch = new PlaceWatch(Bench.TANK, Bench.SHELF, true);
    watch(watch, times(40, 1.5, 16));
    watch(watch, times(5, 0.0, 18));
    watch(watch, times(40, 0.8, 19));
    assertEquals(Optional.empty(), watch.away());
  }

  @Test
  void takesANewPlaceForItsPlaceInTheEnd() {
    PlaceWatch watch = new PlaceWatch(Bench.TANK, Bench.SHELF, false);
    watch(watch, times(40, 1.5, 16));
    watch(watch, times(4, 0.0, 18));
    List<ProbeOutOfPlace> found = watch(watch, times(800, 0.46, 14));
    assertEquals(1, found.size());
    assertTrue(found.get(0).note().contains("after two hours"));
  }
}
