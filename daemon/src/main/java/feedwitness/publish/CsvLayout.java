package feedwitness.publish;

import java.time.ZoneId;

/**
 * How an export is written.
 *
 * @param zone of all times
 * @param separator between fields: {@code ,} {@code ;} or TAB
 * @param decimalComma whether numbers have a decimal comma; not with {@code ,} as separator
 */
public record CsvLayout(ZoneId zone, char separator, boolean decimalComma) {
  public CsvLayout {
    if (separator != ',' && separator != ';' && separator != '\t') {
      throw new IllegalArgumentException(
          "separator '%s' is not comma, semicolon or tab".formatted(separator));
    }
    if (decimalComma && separator == ',') {
      throw new IllegalArgumentException(
          "a decimal comma and a comma between fields cannot be told apart; separate fields by semicolon or tab");
    }
  }
}
