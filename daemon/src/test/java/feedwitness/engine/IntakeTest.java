package feedwitness.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.PointName;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Missing;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class IntakeTest {
  @Test
  void samplesAreDatedOnceTheClockIsTrusted() throws Exception {
    AtomicBoolean trusted = new AtomicBoolean();
    Intake intake = new Intake(3, TimeSource.system(), trusted::get);
    PointName line = new PointName("line");
    for (int i = 0; i < 2; i++) {
      intake.accept(stamp -> new Missing(line, stamp, Missing.Cause.SILENT, "line: silent"));
      trusted.set(true);
    }
    Intake.Entry before = intake.poll(0);
    Intake.Entry after = intake.poll(0);
    assertNotNull(before);
    assertNotNull(after);
    assertFalse(before.samples().get(0).stamp().dated());
    assertTrue(after.samples().get(0).stamp().dated());
    assertEquals("3-2", after.samples().get(0).stamp().id());
  }
}
