package feedwitness.app;

import feedwitness.settings.DurationText;
import java.time.Duration;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads durations such as 90s, 10min or 2h on the command line. */
final class DurationOption implements ITypeConverter<Duration> {
  @Override
  public Duration convert(String text) {
    try {
      return DurationText.parse(text);
    } catch (IllegalArgumentException e) {
      throw new TypeConversionException(String.valueOf(e.getMessage()));
    }
  }
}
