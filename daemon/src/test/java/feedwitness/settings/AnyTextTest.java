package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** No text makes reading throw; whatever is wrong is a problem with a place in the text. */
class AnyTextTest {
  private static final ConfigFiles NOWHERE =
      ConfigFiles.without(Path.of("/nonexistent/feedwitness"), Desk.ZONE);

  @Provide
  Arbitrary<String> tomlish() {
    Arbitrary<String> pieces =
        Arbitraries.of(
            "[[point]]",
            "[point]",
            "[conductivity]",
            "[line]",
            "[modbus]",
            "reads = [",
            "{",
            "}",
            "[",
            "]",
            "name",
            "place",
            "port",
            "unit",
            "profile",
            "pattern",
            "group",
            "register",
            " = ",
            "=",
            ",",
            ".",
            "\"",
            "'",
            "\"\"\"",
            "\\",
            "\n",
            "\r\n",
            " ",
            "#",
            "tank",
            "\"tank\"",
            "\"modbus-float\"",
            "\"/dev/x\"",
            "\"2s\"",
            "'(?<conductivity>.)'",
            "11",
            "-1",
            "1,88",
            "1e999",
            "nan",
            "true",
            "2026-06-01",
            "title",
            "interval",
            "function",
            "type",
            "\"float32\"",
            "[instrument]",
            "rated-conductivity",
            "\u0000",
            "µ",
            "😀",
            "\uD800",
            "zone");
    return Arbitraries.oneOf(
        pieces.list().ofMaxSize(60).map(list -> String.join("", list)),
        Arbitraries.strings().ofMaxLength(80));
  }

  @Provide
  Arbitrary<String> damaged() {
    String profile = ProfileFaultsTest.MODBUS + ProfileFaultsTest.LINE;
    return Arbitraries.of(ProfileFaultsTest.MODBUS, ProfileFaultsTest.LINE, profile)
        .flatMap(
            text ->
                Arbitraries.integers()
                    .between(0, text.length() - 1)
                    .flatMap(
                        at ->
                            Arbitraries.strings()
                                .ofMaxLength(4)
                                .map(in -> text.substring(0, at) + in + text.substring(at + 1))));
  }

  @Property(tries = 400)
  void aConfigurationIsReadOrFaulty(@ForAll("tomlish") String text) {
    ConfigOutcome outcome = ConfigReader.read(NOWHERE, Optional.of(text));
    if (outcome instanceof ConfigOutcome.Faulty faulty) {
      places(text, faulty.problems());
    }
  }

  @Property(tries = 400)
  void aProfileIsReadOrFaulty(@ForAll("damaged") String text) {
    profile(text);
  }

  @Property(tries = 200)
  void aProfileOfAnyTextIsReadOrFaulty(@ForAll("tomlish") String text) {
    profile(text);
  }

  private static void profile(String text) {
    Problems problems = new Problems();
    boolean read = ProfileReader.parse(Path.of("any.toml"), text, problems).isPresent();
    assertTrue(read || !problems.none(), "neither read nor faulty");
    places(text, problems.list());
  }

  private static void places(String text, List<Problem> problems) {
    assertTrue(!problems.isEmpty() || text != null);
    long lines = text.split("\r\n|\r|\n", -1).length;
    for (Problem problem : problems) {
      assertTrue(problem.line() >= 1 && problem.line() <= lines, problem::text);
      assertTrue(problem.column() >= 1, problem::text);
      assertTrue(problem.text().lines().count() == 1, problem::text);
    }
  }
}
