package feedwitness.app;

import static feedwitness.app.CheckedNursery.TANK;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The whole way through a check from a terminal, against a running service. */
@Timeout(300)
class CheckCommandTest {
  @TempDir Path folder;

  private static Cli check(CheckedNursery house, String... words) {
    return Cli.run(
        Stream.concat(
                Stream.of("check"),
                Stream.concat(
                    Arrays.stream(words),
                    Stream.of("--who", "Robin", "--config", house.configuration())))
            .toArray(String[]::new));
  }

  private static String done(CheckedNursery house, String... words) {
    Cli said = check(house, words);
    assertEquals(0, said.code(), said::err);
    return said.out();
  }

  private static String refused(CheckedNursery house, String... words) {
    Cli said = check(house, words);
    assertEquals(1, said.code(), said::out);
    return said.err();
  }

  private static String round(CheckedNursery house) {
    house.nursery.begin("tank in-standard +3h 1.413mS/cm");
    done(house, "standard", "tank");
    house.nursery.begin("tank in-standard +3h 2.77mS/cm");
    return done(house, "standard", "tank");
  }

  @Test
  void leadsFromAFailureToAPassAndBack() throws Exception {
    try (CheckedNursery house = new CheckedNursery(folder, CheckedNursery.SUNDAY, 30)) {
      house.nursery.begin("tank adjust -6%");
      house.settleIn("tank");
      assertTrue(done(house, "status").contains("tank: never checked"), "status");
      assertTrue(
          refused(house, "start", "tank", "--standard", "low").contains("one standard cannot tell"),
          "start asks");
      String begun = done(house, "start", "tank", "--standard", "low", "--standard", "high");
      assertTrue(begun.contains("now: rinse the probe"), begun);
      assertTrue(refused(house, "clean", "tank").contains("as found"), "as found first");
      String found = round(house);
      assertTrue(found.contains("verdict: fail"), found);
      done(house, "clean", "tank", "--note", "soft brush");
      String cleaned = round(house);
      assertTrue(cleaned.contains("adjustment: calibrated ="), cleaned);
      assertTrue(refused(house, "adjust", "tank").contains("give --yes"), "adjust asks");
      assertTrue(done(house, "adjust", "tank", "--yes").contains("adjusted in two"), "adjusts");
      String left = round(house);
      assertTrue(left.contains("verdict: pass"), left);
      done(house, "finish", "tank");
      String back = done(house, "returned", "tank");
      assertTrue(back.contains("in doubt: "), back);

      JsonNode kept = house.service.get(TANK);
      assertEquals("pass", kept.at("/stand/verdict").asText(), kept::toString);
      assertEquals("Robin", kept.at("/checks/0/who").asText());
      assertTrue(done(house, "log").contains(",Robin,"), "log");
      assertTrue(refused(house, "undo", "tank").contains("give --yes"), "undo asks");
      done(house, "undo", "tank", "--yes");
      assertTrue(refused(house, "undo", "tank", "--yes").contains("no adjustment"), "only once");

      assertTrue(refused(house, "replaced", "tank").contains("begin anew; give --yes"), "asks");
      String other = done(house, "replaced", "tank", "--yes", "--note", "new cell");
      assertTrue(other.contains("not checked since it was replaced on 7 June 2026"), other);
      JsonNode now = house.service.get(TANK);
      assertEquals("never-checked", now.at("/stand/status").asText(), now::toString);
      assertEquals("cant-tell", now.at("/stand/verdict").asText(), now::toString);
      assertEquals(3, now.at("/chart/points").size(), now::toString);
      assertTrue(done(house, "log").contains("replaced: new cell"), "log");
    }
  }

  @Test
  void comparesAFixedProbeWithASampleAndAThermometer() throws Exception {
    try (CheckedNursery house = new CheckedNursery(folder, CheckedNursery.SUNDAY, 30)) {
      house.settleIn("tank");
      String[] sample = {
        "sample", "tank", "--with", "pen", "--reading", "1.2", "--temperature", "18"
      };
      assertTrue(refused(house, sample).contains("check it in standards first"), "unchecked");
      for (String shown : new String[] {"1.41", "2.77"}) {
        if (shown.equals("1.41")) {
          done(house, "start", "meter/pen", "--standard", "low", "--standard", "high");
        }
        done(house, "standard", "meter/pen", "--reading", shown, "--temperature", "22");
      }
      done(house, "finish", "meter/pen");
      String compared = done(house, sample);
      assertTrue(compared.contains("sample measured with another meter (pen): "), compared);
      String warm = done(house, "thermometer", "tank", "--with", "glass 7", "--temperature", "18");
      assertTrue(warm.contains("reference thermometer (glass 7): "), warm);
      assertTrue(refused(house, "sample", "tank").contains("name"), "says what is missing");
      assertEquals(2, house.service.get(TANK).path("compared").size());
    }
  }

  @Test
  void asksWhichBottleItIs() throws Exception {
    try (CheckedNursery house = new CheckedNursery(folder, CheckedNursery.SUNDAY, 30)) {
      house.settleIn("tank");
      done(house, "start", "tank", "--standard", "low", "--standard", "high");
      house.nursery.begin("tank in-standard +3h 2.77mS/cm");
      String asked = done(house, "standard", "tank");
      assertTrue(asked.contains("did you mean KCl 0.02 mol/L, 2.77 mS/cm, lot QE-C11?"), asked);
      String again = done(house, "other-bottle", "tank");
      assertTrue(again.contains("a reading in the wrong bottle was left out"), again);
      assertTrue(again.contains("now: rinse the probe with a little of KCl 0.01"), again);
      assertTrue(refused(house, "that-bottle", "tank").contains("nothing was asked"), "asked");
      done(house, "abandon", "tank");
    }
  }
}
