package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.ListenAddress;
import java.time.Duration;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Durations, conductivities and addresses as people write them. */
class TextsTest {
  @Test
  void readsDurations() {
    assertEquals(Duration.ofMillis(300), DurationText.parse("300ms"));
    assertEquals(Duration.ofSeconds(2), DurationText.parse("2s"));
    assertEquals(Duration.ofMillis(1500), DurationText.parse("1.5 s"));
    assertEquals(Duration.ofMinutes(5), DurationText.parse("5min"));
    assertEquals(Duration.ofHours(1), DurationText.parse("1h"));
    assertEquals(Duration.ofDays(2), DurationText.parse("2d"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "2", "s", "-2s", "2 sec", "1,5s", "2m", "9999d", "0.0001s", "1e3s"})
  void refusesWhatIsNoDuration(String text) {
    assertThrows(IllegalArgumentException.class, () -> DurationText.parse(text));
  }

  @Property(tries = 200)
  void writesDurationsAsItReadsThem(@ForAll @LongRange(min = 0, max = 100_000_000) long millis) {
    Duration duration = Duration.ofMillis(millis);
    assertEquals(duration, DurationText.parse(DurationText.of(duration)));
  }

  @Test
  void readsConductivitiesWithTheirUnits() {
    assertEquals(20, ConductivityText.parseMilliSiemensPerCm("20 mS/cm"), 1e-12);
    assertEquals(1.413, ConductivityText.parseMilliSiemensPerCm("1413 µS/cm"), 1e-12);
    assertEquals(1.413, ConductivityText.parseMilliSiemensPerCm("1413uS/cm"), 1e-12);
    assertEquals(2.1, ConductivityText.parseMilliSiemensPerCm("21 CF"), 1e-12);
    assertEquals(12.88, ConductivityText.parseMilliSiemensPerCm("1.288 S/m"), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "20", "mS/cm", "-1 mS/cm", "1,4 mS/cm", "1.4 ppm", "NaN mS/cm"})
  void refusesAConductivityWithoutNumberOrUnit(String text) {
    assertThrows(
        IllegalArgumentException.class, () -> ConductivityText.parseMilliSiemensPerCm(text));
  }

  @Test
  void readsListenAddresses() {
    assertEquals(new ListenAddress("127.0.0.1", 8460), ListenAddress.parse("127.0.0.1:8460"));
    assertEquals(new ListenAddress("::1", 80), ListenAddress.parse("[::1]:80"));
    assertEquals("[::1]:80", ListenAddress.parse("[::1]:80").text());
    assertTrue(ListenAddress.parse("localhost:0").isLoopback());
    assertFalse(ListenAddress.parse("0.0.0.0:8460").isLoopback());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "8460", ":8460", "127.0.0.1", "a:b", "a:70000", "::1:80", "a b:80"})
  void refusesWhatIsNoListenAddress(String text) {
    assertThrows(IllegalArgumentException.class, () -> ListenAddress.parse(text));
  }
}
