package feedwitness.host;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.host.SynchronisedClock.Kernel;
import feedwitness.quantity.TimeSource;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SynchronisedClockTest {
  @TempDir private Path run;

  private final AtomicReference<Kernel> kernel = new AtomicReference<>(Kernel.NOT_SYNCHRONISED);
  private final AtomicInteger asked = new AtomicInteger();
  private long nanos = Long.MAX_VALUE - 5;

  private final TimeSource time =
      new TimeSource() {
        @Override
        public long monotonicNanos() {
          return nanos;
        }

        @Override
        public Instant wall() {
          return Instant.EPOCH;
        }
      };

  private SynchronisedClock clock() {
    return new SynchronisedClock(
        run.resolve("synchronized"),
        () -> {
          asked.incrementAndGet();
          return kernel.get();
        },
        time);
  }

  private void aSecondLater() {
    nanos += 1_000_000_000L;
  }

  @Test
  void believesTheClockOnceTheTimeServiceLeftItsMarker() throws Exception {
    kernel.set(Kernel.SILENT);
    SynchronisedClock clock = clock();
    assertFalse(clock.trusted());
    Files.createFile(run.resolve("synchronized"));
    aSecondLater();
    assertTrue(clock.trusted());
    Files.delete(run.resolve("synchronized"));
    aSecondLater();
    assertTrue(clock.trusted(), "a clock that was set keeps going");
  }

  @Test
  void believesTheKernelWhereThereIsNoMarker() {
    SynchronisedClock clock = clock();
    assertFalse(clock.trusted());
    kernel.set(Kernel.SYNCHRONISED);
    aSecondLater();
    assertTrue(clock.trusted());
  }

  @Test
  void aKernelThatMayNotAnswerIsNoWitness() {
    kernel.set(Kernel.SILENT);
    SynchronisedClock clock = clock();
    for (int i = 0; i < 5; i++) {
      assertFalse(clock.trusted());
      aSecondLater();
    }
  }

  @Test
  void asksAtMostOnceASecondHoweverManySamplesCome() {
    SynchronisedClock clock = clock();
    for (int i = 0; i < 1_000; i++) {
      assertFalse(clock.trusted());
    }
    assertEquals(1, asked.get());
  }

  @Test
  void theKernelOfThisMachineGivesAnAnswer() {
    assertNotNull(new KernelClock().get());
    assertTrue(new DiskRoom(run).getAsLong() > 0);
    assertEquals(Long.MAX_VALUE, new DiskRoom(run.resolve("absent")).getAsLong());
  }
}
