package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Text that is no TOML: what someone meant who never saw TOML. */
class SyntaxSlipsTest {
  private static final String POINT = "[[point]]\nname = \"drain\"\nplace = \"drain\"\n";

  @TempDir private Path folder;

  private void slip(String line, String place, String... words) {
    new Desk(folder).fault(Desk.NURSERY + POINT + line + "\n", place, words);
  }

  @Test
  void aDecimalComma() {
    slip("percent-per-kelvin = 1,88", "8:23", "1,88 has a decimal comma", "write 1.88");
  }

  @Test
  void quotationMarksOfAWordProcessor() {
    slip("title = “Bench”", "8:9", "typographic quotation mark", "the straight one");
  }

  @Test
  void textWithoutQuotationMarks() {
    slip(
        "title = Reference bench", "8:9", "without quotation marks", "title = \"Reference bench\"");
    slip("port = /dev/ttyUSB0 # blue", "8:8", "port = \"/dev/ttyUSB0\"");
  }

  @Test
  void aTextWithoutItsEnd() {
    slip("title = \"Bench", "8:15", "no quotation mark at its end");
  }

  @Test
  void aColonForTheEqualsSign() {
    slip("title: \"Bench\"", "8:6", "write = instead of :");
  }

  @Test
  void aKeyOfTwoWords() {
    slip("percent per kelvin = 1.9", "8:9", "is no TOML");
  }

  @Test
  void aValueWithItsUnitOutsideQuotationMarks() {
    slip("percent-per-kelvin = 1.88 %/K", "8:27", "1.88 %/K is a number with a unit");
  }

  @Test
  void truthInCapitals() {
    slip("instrument-compensates = True", "8:26", "write true, in lower case");
    slip("instrument-compensates = no", "8:26", "write false");
  }

  @Test
  void numbersWrittenShort() {
    slip("percent-per-kelvin = .9", "8:22", "write 0 before the point");
    slip("percent-per-kelvin = 2.", "8:23", "write 0 after the point");
    slip("unit = 011", "8:9", "without leading zeros");
  }

  @Test
  void oneBracketTooFew() {
    new Desk(folder)
        .fault(
            Desk.NURSERY + POINT.replace("]]", "]"),
            "5:8",
            "two brackets on one side",
            "[[point]]");
  }

  @Test
  void aKeyWrittenTwice() {
    slip("name = \"drain\"", "8:1", "'name' stands here again, first on line 6", "keep one");
  }

  @Test
  void pointsBegunInTwoWays() {
    Desk desk = new Desk(folder);
    desk.write(
        "feedwitness.toml",
        Desk.NURSERY + "[point]\nname = \"a\"\n[point]\nname = \"b\"\n[[point]]\n");
    List<String> said = Desk.wrong(desk.read()).stream().map(Problem::text).toList();
    assertTrue(
        said.get(1).contains(":7:1: 'point' was begun otherwise on line 5; write every"),
        said::toString);
    assertTrue(
        said.stream().anyMatch(text -> text.contains(":9:1: 'point' was begun otherwise")),
        said::toString);
  }

  @Test
  void aBackslashInDoubleQuotationMarks() {
    slip("title = \"C:\\data\"", "8:12", "backslash", "single quotation marks");
  }

  @Test
  void aFolderOfAnotherSystem() {
    slip("title = \"C:\\users\"", "8:12", "backslash", "single quotation marks");
  }

  @Test
  void aKeyWithoutAValue() {
    slip("title =", "8:8", "ends too soon");
  }

  @Test
  void bracketsWithoutEnd() {
    new Desk(folder).fault("a = " + "[".repeat(50_000), "1:1", "nested too deeply");
  }

  @Test
  void anInvisibleMarkAtTheBeginningIsNoFault() {
    new Desk(folder).right("\uFEFF" + Desk.NURSERY + POINT);
  }

  @Test
  void linesThatEndAsOnAnotherSystemAreNoFault() {
    new Desk(folder).right((Desk.NURSERY + POINT).replace("\n", "\r\n"));
  }
}
