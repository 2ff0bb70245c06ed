package feedwitness.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Protocol;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The families that are shipped, against what such instruments send. */
class GoldenCaptureTest {
  private static final Path PROFILES = Path.of("../device-profiles");

  static Stream<DeviceProfile> families() {
    return FamilyProfiles.all().stream();
  }

  @ParameterizedTest
  @MethodSource("families")
  void everyFamilyReadsItsGoldenCapture(DeviceProfile profile) throws Exception {
    CaptureReplay.check(
        profile, Capture.read(PROFILES.resolve("golden/" + profile.name() + ".capture")));
  }

  @Test
  void aProfileThatDisagreesWithItsCaptureIsFound() throws Exception {
    Capture capture = Capture.read(PROFILES.resolve("golden/tcp-text.capture"));
    assertThrows(
        AssertionError.class, () -> CaptureReplay.check(FamilyProfiles.pushedCsv(), capture));
  }

  @Test
  void theIndexNamesEveryProfileAndEachHasACapture() throws Exception {
    TreeSet<String> files;
    try (Stream<Path> all = Files.list(PROFILES)) {
      files =
          all.map(file -> String.valueOf(file.getFileName()))
              .filter(name -> name.endsWith(".toml"))
              .collect(Collectors.toCollection(TreeSet::new));
    }
    assertEquals(
        List.copyOf(files), Files.readAllLines(PROFILES.resolve("profiles.index")), "in order");
    for (String file : files) {
      assertTrue(
          Files.exists(PROFILES.resolve("golden/" + file.replace(".toml", ".capture"))),
          "no golden capture for " + file);
    }
    assertEquals(
        files,
        families().map(p -> p.name() + ".toml").collect(Collectors.toCollection(TreeSet::new)),
        "families tested here");
  }

  @Test
  void theIndexAndTheProfilesAreInTheJar() throws Exception {
    for (String file : Files.readAllLines(PROFILES.resolve("profiles.index"))) {
      try (var shipped = getClass().getResourceAsStream("/feedwitness/profiles/" + file)) {
        assertFalse(shipped == null, file + " is not on the class path");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("families")
  void thePatternsTriedHereAreThoseOfTheFiles(DeviceProfile profile) throws Exception {
    if (profile.protocol() instanceof Protocol.Line line) {
      String file =
          Files.readString(PROFILES.resolve(profile.name() + ".toml"), StandardCharsets.UTF_8);
      assertTrue(file.contains("'" + line.pattern().pattern() + "'"), line.pattern().pattern());
      Optional<String> ignore = line.ignore().map(pattern -> pattern.pattern());
      assertTrue(file.contains("'" + ignore.orElse("") + "'") || ignore.isEmpty());
    }
  }

  @ParameterizedTest
  @MethodSource("families")
  void noHostileLineTakesALongTime(DeviceProfile profile) throws Exception {
    if (profile.protocol() instanceof Protocol.Line line) {
      for (String seed :
          List.of(" ", "1", "1.", ".", ",", "1,", "EC=", "E", "C", "-", "1 ", "\t")) {
        String hostile = seed.repeat(4096 / seed.length());
        for (String text : List.of(hostile, hostile + "x", "1" + hostile, "EC" + hostile)) {
          BoundedMatch.of(line.pattern(), text);
          if (line.ignore().isPresent()) {
            BoundedMatch.of(line.ignore().get(), text);
          }
        }
      }
    }
  }
}
