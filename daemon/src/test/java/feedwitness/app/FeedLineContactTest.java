package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.watch.drift.DriftStanding.Phase;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A flow contact in the running engine and store: it says when water flows. */
@Timeout(120)
class FeedLineContactTest {
  private static final String INJECTOR = "ratio = 80\nstrengths = [\"1.50 mS/cm\"]\n";

  @TempDir private Path folder;

  @Test
  void withAContactEventsAreSeenThatTheSignalHides() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.sameWarmth().contact(true).hours(7.5);
      assertEquals(Phase.NORMAL, line.status().standing().phase());
      assertEquals(13, line.status().standing().events());
      line.delivering(0.88).hours(3);
      assertEquals(List.of("injector-drift"), line.alarms());
    }
  }

  @Test
  void aContactLookedForWhereThereIsNoneLeavesTheSignal() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR + "contact = \"line-2\"\n")) {
      line.contact(true).hours(7.5);
      assertEquals(13, line.status().standing().events());
    }
  }

  @Test
  void whatIsStoredIsReplayedWithItsContact() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.sameWarmth().contact(true).hours(7.5).delivering(0.88).hours(3);
      List<String> live = line.findings();
      assertTrue(live.stream().anyMatch(each -> each.startsWith("alarm")), live::toString);
      assertEquals(live, line.replayed());
    }
  }

  @Test
  void aContactThatFallsSilentLeavesTheSignal() throws Exception {
    try (WateredLine line = new WateredLine(folder, INJECTOR)) {
      line.contact(true).hours(3.2).contact(false).hours(4.3);
      assertEquals(13, line.status().standing().events());
    }
  }
}
