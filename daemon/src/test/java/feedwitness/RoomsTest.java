package feedwitness;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of rooms in DEVELOPERS.md, held against the code. */
class RoomsTest {
  private static final JavaClasses CODE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("feedwitness");

  /** Rooms with knowledge only: no I/O, no clock. Others may import "the domain" as a whole. */
  private static final Set<String> DOMAIN =
      Set.of(
          "solution",
          "feed",
          "frame",
          "profile",
          "site",
          "sample",
          "calibration",
          "quality",
          "measurement",
          "alarm",
          "check",
          "watch");

  /** Room → rooms it may import besides {@code quantity}. */
  private static final Map<String, Set<String>> TABLE = new TreeMap<>();

  static {
    TABLE.put("quantity", Set.of());
    TABLE.put("host", Set.of());
    TABLE.put("solution", Set.of());
    TABLE.put("feed", Set.of("solution"));
    TABLE.put("frame", Set.of());
    TABLE.put("profile", Set.of("frame"));
    TABLE.put("site", Set.of("profile", "feed"));
    TABLE.put("settings", Set.of("site", "profile", "feed", "calibration"));
    TABLE.put("wire", Set.of());
    TABLE.put("sample", Set.of("frame", "profile"));
    TABLE.put("acquire", Set.of("wire", "frame", "sample", "profile"));
    TABLE.put("calibration", Set.of("solution"));
    TABLE.put("quality", Set.of("sample"));
    TABLE.put("measurement", Set.of("sample", "quality", "calibration", "solution"));
    TABLE.put("alarm", Set.of("site"));
    TABLE.put("check", Set.of("measurement", "calibration", "solution", "alarm"));
    TABLE.put("watch", Set.of("measurement", "check", "feed", "solution", "alarm", "site"));
    TABLE.put("ledger", DOMAIN);
    TABLE.put("engine", with(DOMAIN, "acquire", "host", "ledger"));
    TABLE.put("store", with(DOMAIN, "ledger"));
    TABLE.put("publish", with(DOMAIN, "ledger", "engine"));
    TABLE.put("simulate", Set.of("solution", "feed"));
  }

  /** Outside library → the only rooms that may touch it. */
  private static final Map<String, Set<String>> LIBRARIES =
      Map.ofEntries(
          Map.entry("com.fazecast", Set.of("wire")),
          Map.entry("org.freedesktop", Set.of("wire")),
          Map.entry("com.sun.jna", Set.of("host", "simulate")),
          Map.entry("org.tomlj", Set.of("settings")),
          Map.entry("java.sql", Set.of("store")),
          Map.entry("org.h2", Set.of("store")),
          Map.entry("io.javalin", Set.of("publish")),
          Map.entry("org.eclipse.jetty", Set.of("publish")),
          Map.entry("io.nayuki", Set.of("publish")),
          Map.entry("jakarta", Set.of("publish")),
          Map.entry("org.eclipse.angus", Set.of("publish")),
          Map.entry("com.fasterxml", Set.of("publish")),
          Map.entry("org.ojalgo", Set.of("feed")),
          Map.entry("picocli", Set.of("app")));

  private static Set<String> with(Set<String> rooms, String... more) {
    Set<String> all = new TreeSet<>(rooms);
    all.addAll(List.of(more));
    return Set.copyOf(all);
  }

  private static String room(JavaClass type) {
    String[] words = type.getPackageName().split("\\.", -1);
    return words.length > 1 ? words[1] : "";
  }

  @Test
  void everyRoomStandsInTheTable() {
    Set<String> strangers = new TreeSet<>();
    for (JavaClass type : CODE) {
      if (!room(type).equals("app") && !TABLE.containsKey(room(type))) {
        strangers.add(type.getName());
      }
    }
    assertTrue(strangers.isEmpty(), () -> "not in any room of the table: " + strangers);
  }

  @Test
  void roomsImportOnlyWhatTheTableAllows() {
    for (Map.Entry<String, Set<String>> row : TABLE.entrySet()) {
      List<String> forbidden = new ArrayList<>(List.of("feedwitness.app.."));
      for (String other : TABLE.keySet()) {
        if (!other.equals(row.getKey())
            && !other.equals("quantity")
            && !row.getValue().contains(other)) {
          forbidden.add("feedwitness." + other + "..");
        }
      }
      noClasses()
          .that()
          .resideInAPackage("feedwitness." + row.getKey() + "..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(forbidden.toArray(new String[0]))
          .because("the table of rooms says so")
          .allowEmptyShould(true)
          .check(CODE);
    }
  }

  @Test
  void roomsFormNoCycles() {
    slices().matching("feedwitness.(*)..").should().beFreeOfCycles().check(CODE);
  }

  @Test
  void outsideLibrariesStayInTheirRooms() {
    for (Map.Entry<String, Set<String>> library : LIBRARIES.entrySet()) {
      String[] rooms =
          library.getValue().stream().map(r -> "feedwitness." + r + "..").toArray(String[]::new);
      noClasses()
          .that()
          .resideOutsideOfPackages(rooms)
          .should()
          .dependOnClassesThat()
          .resideInAPackage(library.getKey() + "..")
          .because("each outside library is confined to its room")
          .allowEmptyShould(true)
          .check(CODE);
    }
  }

  @Test
  void knowledgeDoesNoInputOrOutputAndReadsNoClock() {
    String[] pure = DOMAIN.stream().map(r -> "feedwitness." + r + "..").toArray(String[]::new);
    noClasses()
        .that()
        .resideInAnyPackage(pure)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.io..", "java.nio.file..", "java.net..", "org.tinylog..")
        .check(CODE);
    noClasses()
        .that()
        .resideInAnyPackage(pure)
        .should()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(java.time.Instant.class, "now")
        .check(CODE);
  }

  @Test
  void noStaticIsEverReassigned() {
    ArchRuleDefinition.fields()
        .that()
        .areStatic()
        .should()
        .beFinal()
        .because("mutable statics make two services in one process impossible")
        .check(CODE);
  }

  @Test
  void everyRoomSaysWhatMayLiveThere() throws Exception {
    Path source = Path.of("src/main/java/feedwitness");
    try (Stream<Path> folders = Files.walk(source)) {
      List<Path> silent =
          folders
              .filter(Files::isDirectory)
              .filter(folder -> !folder.equals(source))
              .filter(folder -> !Files.exists(folder.resolve("package-info.java")))
              .toList();
      assertTrue(silent.isEmpty(), () -> "no package-info.java in " + silent);
    }
  }
}
