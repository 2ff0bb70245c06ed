package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.ListenAddress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** docs/configuration.md, held against the reader. */
class ConfigurationDocumentTest {
  @TempDir private Path folder;

  private static String document() throws IOException {
    return Files.readString(Path.of("docs/configuration.md"));
  }

  @Test
  void itsExampleIsAConfiguration() throws IOException {
    String text = document();
    int start = text.indexOf("```toml\n") + "```toml\n".length();
    Config config =
        new Desk(folder).right(text.substring(start, text.indexOf("```", start))).config();
    assertEquals(4, config.site().points().size());
    assertEquals(3, config.checks().shelf().standards().size());
  }

  @Test
  void itNamesExactlyTheKeysThereAre() throws IOException {
    Set<String> named = new TreeSet<>();
    Matcher row = Pattern.compile("(?m)^\\| `([a-z-]+)` \\|").matcher(document());
    while (row.find()) {
      named.add(row.group(1));
    }
    Set<String> known = new TreeSet<>(PointReader.KEYS);
    known.addAll(ConfigReader.NURSERY);
    known.addAll(ConfigReader.SERVER);
    known.addAll(WebReader.WEB);
    known.addAll(StoreReader.STORE);
    known.addAll(StoreReader.CLOCK);
    known.addAll(MessagesReader.MESSAGES);
    known.addAll(MailReader.KEYS);
    known.addAll(WebhookReader.KEYS);
    known.addAll(CheckReader.KEYS);
    known.addAll(StandardReader.KEYS);
    known.addAll(AlarmsReader.STRENGTH);
    known.addAll(AlarmsReader.ALARM);
    assertEquals(known, named);
  }

  @Test
  void itStatesTheDefaultsAndLimits() throws IOException {
    String text = document();
    assertTrue(text.contains(ListenAddress.DEFAULT.text()));
    assertTrue(text.contains(DurationText.of(StoreReader.DEFAULT_SYNC)));
    assertTrue(text.contains(SizeText.of(StoreReader.DEFAULT_FLOOR)));
    assertTrue(text.contains(DurationText.of(StoreReader.DEFAULT_KEEP)));
    assertTrue(text.contains(StoreReader.FOR_EVER));
    assertTrue(text.contains(DurationText.of(CheckRule.USUAL.interval())));
    assertTrue(text.contains(DurationText.of(CheckRule.USUAL.longestInterval())));
    assertTrue(
        text.contains(
            Values.number(CompensationReader.LEAST_PERCENT)
                + " to "
                + Values.number(CompensationReader.MOST_PERCENT)));
    assertTrue(text.contains(Values.number(LimitsReader.DEFAULT_DEADBAND) + " mS/cm"));
    assertTrue(text.contains(Values.number(feedwitness.site.Strength.USUAL_TOLERANCE) + " mS/cm"));
    feedwitness.site.AlarmRule.KINDS.forEach(
        kind -> assertTrue(text.contains("`\"" + kind + "\"`"), kind));
    assertTrue(text.contains(ConfigFiles.GENERATED) && text.contains(ConfigFiles.STORE));
  }
}
