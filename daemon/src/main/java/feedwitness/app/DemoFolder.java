package feedwitness.app;

import feedwitness.quantity.ListenAddress;
import feedwitness.quantity.TimeSource;
import feedwitness.settings.ConfigFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.tinylog.Logger;

/** Where a demo keeps what it needs: configuration, cables, readings, and how late it is there. */
record DemoFolder(Path root) {
  /** Where Quarry End is. */
  static final ZoneId ZONE = ZoneId.of("Europe/London");

  private static final String CONFIG = "quarry-end.toml";
  private static final String CLOCK = "clock.txt";
  private static final String RECIPE = "growing-on.toml";

  /** What is in the stock barrel, as {@code feedwitness mix} reads it. */
  private static final String GROWING_ON =
      """
      title = "House Feed, growing on"

      [water]
      measured = "0.46 mS/cm"

      [goal]
      strength = "1.50 mS/cm"
      frequency = "every watering"

      [[use]]
      product = "house-feed"

      [stock]
      volume = "200 L"
      makes = 80
      coldest-night = "8 °C"
      """;

  static DemoFolder open(Path directory) throws IOException {
    Path root = directory.toAbsolutePath().normalize();
    Files.createDirectories(root);
    return new DemoFolder(root);
  }

  Path ports() {
    return root.resolve("cables");
  }

  /**
   * When the demo's clock starts. At normal speed: now. Faster: on a Monday morning of last June,
   * when the glasshouse is watered 24 times a day, so that what happens in the week can be learnt
   * and noticed within it. Never before an earlier demo in this folder ended.
   */
  Instant clockStart(double speed, Instant now) throws IOException {
    Instant start = now;
    if (speed != 1) {
      LocalDate today = now.atZone(ZONE).toLocalDate();
      LocalDate monday = summer(today.getYear());
      start =
          (monday.plusWeeks(1).isAfter(today) ? summer(today.getYear() - 1) : monday)
              .atTime(LocalTime.of(6, 0))
              .atZone(ZONE)
              .toInstant();
    }
    try {
      Instant last = Instant.parse(Files.readString(root.resolve(CLOCK)).strip());
      return last.isAfter(start) ? last : start;
    } catch (NoSuchFileException e) {
      return start;
    } catch (DateTimeException e) {
      Logger.warn("{} holds no time; starting at {}", root.resolve(CLOCK), start);
      return start;
    }
  }

  private static LocalDate summer(int year) {
    return LocalDate.of(year, 6, 15).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
  }

  /** Writes the nursery's configuration anew, as a grower there would have written it. */
  ConfigFiles writeConfig(String sourceLink, String busLink, ListenAddress listen)
      throws IOException {
    Path file = root.resolve(CONFIG);
    Files.writeString(root.resolve(RECIPE), GROWING_ON);
    Files.writeString(
        file,
        """
        # The demo's configuration, written anew at each start.
        [nursery]
        name = "Quarry End Nursery"
        zone = "%s"

        [server]
        listen = "%s"

        [store]
        directory = "readings"

        [[point]]
        name = "line"
        title = "Glasshouse line"
        place = "line"
        port = "%s"
        profile = "modbus-contact"
        unit = 12
        compensation = "linear"
        percent-per-kelvin = 1.88
        # the weakest and the strongest feed; the strengths below narrow it
        conductivity-low = "0.65 mS/cm"
        conductivity-high = "2.25 mS/cm"
        temperature-low = 4
        temperature-high = 32

        [[point]]
        name = "tank"
        title = "Mixing tank, 600 L"
        place = "tank"
        port = "%s"
        profile = "modbus-float"
        unit = 11
        compensation = "linear"
        percent-per-kelvin = 1.88

        [[point]]
        name = "source"
        title = "Borehole, after the filter"
        place = "source"
        port = "%s"
        profile = "pushed-csv"
        compensation = "iso7888"

        [[point]]
        name = "drain"
        title = "Run-off of the reference bench"
        place = "drain"
        compensation = "linear"

        [[feed-line]]
        name = "glasshouse"
        title = "Glasshouse, from the stock barrel"
        source = "source"
        line = "line"
        drain = "drain"
        ratio = 80
        recipe = "growing-on.toml"

        [[standard]]
        name = "low"
        solution = "KCl 0.01 mol/L"
        lot = "QE-A07"

        [[standard]]
        name = "middle"
        solution = "KCl 0.02 mol/L"
        lot = "QE-C11"

        [[standard]]
        name = "high"
        solution = "KCl 0.1 mol/L"
        lot = "QE-B03"

        [[strength]]
        name = "seedlings"
        title = "Seedlings"
        point = "line"
        conductivity = "0.80 mS/cm"

        [[strength]]
        name = "growing-on"
        title = "Growing on"
        point = "line"
        conductivity = "1.50 mS/cm"

        [[strength]]
        name = "heavy-feeders"
        title = "Heavy feeders"
        point = "line"
        conductivity = "1.95 mS/cm"
        """
            .formatted(ZONE, listen.text(), busLink, busLink, sourceLink));
    return ConfigFiles.beside(file, ZONE);
  }

  /** Notes once a second how late it is in the demo; closing it stops that. */
  ClockKeeper keep(TimeSource clock) {
    return new ClockKeeper(root.resolve(CLOCK), clock);
  }

  static final class ClockKeeper implements AutoCloseable {
    private final Path file;
    private final TimeSource clock;
    private final CountDownLatch closed = new CountDownLatch(1);
    private final Thread thread = new Thread(this::run, "demo clock");

    private ClockKeeper(Path file, TimeSource clock) {
      this.file = file;
      this.clock = clock;
      thread.setDaemon(true);
    }

    void start() {
      thread.start();
    }

    private void run() {
      try {
        do {
          note();
        } while (!closed.await(1, TimeUnit.SECONDS));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    private void note() {
      try {
        Path fresh = file.resolveSibling(CLOCK + ".new");
        Files.writeString(fresh, clock.wall().toString());
        Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
      } catch (IOException e) {
        Logger.warn("the demo's clock cannot be kept: {}", e.getMessage());
      }
    }

    @Override
    public void close() {
      closed.countDown();
    }
  }
}
