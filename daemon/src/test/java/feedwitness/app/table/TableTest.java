package feedwitness.app.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.TemperatureUnit;
import java.io.StringReader;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** How tables of loggers and spreadsheets are understood, piece by piece. */
class TableTest {
  private static Optional<NumberStyle> style(String... numbers) {
    NumberEvidence evidence = new NumberEvidence();
    for (String number : numbers) {
      evidence.add(number);
    }
    return evidence.style();
  }

  private static Optional<DateOrder> order(String... dates) {
    TimeEvidence evidence = new TimeEvidence();
    for (String date : dates) {
      evidence.add(date);
    }
    return evidence.order();
  }

  private static Optional<Instant> time(String text) {
    return new TimeReader(DateOrder.DAY_FIRST, ZoneId.of("UTC")).read(text).time();
  }

  @Test
  void tellsDecimalFromThousandsByAllNumbersTogether() {
    assertEquals(Optional.of(NumberStyle.POINT), style("1413", "12"));
    assertEquals(Optional.of(NumberStyle.POINT), style("1.413", "20.5"));
    assertEquals(Optional.of(NumberStyle.POINT), style("1,413.5", "2,770"));
    assertEquals(Optional.of(NumberStyle.COMMA), style("1.413", "20,5"));
    assertEquals(Optional.of(NumberStyle.COMMA), style("0,460"));
    assertEquals(Optional.of(NumberStyle.COMMA), style("1.234.567"));
    assertEquals(Optional.empty(), style("1,413", "2,770"));
    assertEquals(Optional.empty(), style("1,5", "1.5"));
    assertEquals(Optional.of(NumberStyle.POINT), style("x,y", "#,5", "1.5"));
  }

  @Test
  void readsNumbersOfEitherStyleAndNothingElse() {
    assertEquals(1413.5, NumberStyle.POINT.parse("1,413.5"));
    assertEquals(1413.5, NumberStyle.COMMA.parse("1 413,5"));
    assertEquals(-0.5, NumberStyle.COMMA.parse("-,5"));
    assertEquals(1410, NumberStyle.POINT.parse("1.41E3"));
    for (String wrong : new String[] {"1,41", "14,13,5", "1.2.3", "0x10", "1e", "", "NaN", "1f"}) {
      assertTrue(Double.isNaN(NumberStyle.POINT.parse(wrong)), wrong);
    }
  }

  @Test
  void tellsDayFromMonthOnlyWhereTheDatesProveIt() {
    assertEquals(Optional.of(DateOrder.DAY_FIRST), order("03/04/2025 08:00", "13/04/2025 08:00"));
    assertEquals(Optional.of(DateOrder.MONTH_FIRST), order("04/03/2025", "04/13/2025"));
    assertEquals(Optional.empty(), order("03/04/2025"));
    assertEquals(Optional.empty(), order("13/04/2025", "04/13/2025"));
    assertEquals(Optional.of(DateOrder.DAY_FIRST), order("2025-03-04", "05/05/2025"));
  }

  @Test
  void readsTimesAsTheyAreWritten() {
    Instant eight = Instant.parse("2025-06-01T08:00:00Z");
    assertEquals(Optional.of(eight), time("2025-06-01T08:00:00Z"));
    assertEquals(Optional.of(eight), time("2025-06-01 10:00:00+02:00"));
    assertEquals(Optional.of(eight), time("2025/6/1 8:00"));
    assertEquals(Optional.of(eight), time("1.6.25 08:00"));
    assertEquals(Optional.of(eight), time("01/06/2025, 8:00:00 a.m."));
    assertEquals(Optional.of(eight), time("1748764800"));
    assertEquals(Optional.of(eight.plusMillis(250)), time("1748764800.25"));
    assertEquals(Optional.of(eight), time("1748764800000"));
    assertEquals(Optional.of(Instant.parse("2024-02-29T00:00:00Z")), time("29/02/2024 12:00 AM"));
    for (String wrong :
        new String[] {
          "29/02/2025 08:00",
          "31/04/2025",
          "01/06/2025 24:00",
          "01/06/2025 13:00 PM",
          "yesterday",
          "01-06/2025",
          "",
          "99999999999",
          "001/06/2025"
        }) {
      assertEquals(Optional.empty(), time(wrong), wrong);
    }
  }

  @Test
  void knowsUnitsByTheNamesOfColumns() {
    for (String name : new String[] {"Cond_uScm-1", "EC (µS/cm)", "EC μS/cm", "cond us_cm"}) {
      assertEquals(
          Optional.of(ConductivityUnit.MICROSIEMENS_PER_CM), Heading.conductivityUnit(name), name);
    }
    assertEquals(
        Optional.of(ConductivityUnit.MILLISIEMENS_PER_CM), Heading.conductivityUnit("EC [mS/cm]"));
    assertEquals(
        Optional.of(ConductivityUnit.MILLISIEMENS_PER_M), Heading.conductivityUnit("cond mS/m"));
    assertEquals(
        Optional.of(ConductivityUnit.DECISIEMENS_PER_M), Heading.conductivityUnit("ECe dS m-1"));
    assertEquals(Optional.of(ConductivityUnit.CF), Heading.conductivityUnit("CF"));
    assertEquals(Optional.empty(), Heading.conductivityUnit("EC"));
    assertEquals(Optional.of(TemperatureUnit.CELSIUS), Heading.temperatureUnit("Temp_C"));
    assertEquals(Optional.of(TemperatureUnit.FAHRENHEIT), Heading.temperatureUnit("Temp (°F)"));
    assertEquals(Optional.empty(), Heading.temperatureUnit("Temperature"));
  }

  @Test
  void findsColumnsAndNeverTakesDissolvedSaltsForConductivity() {
    Heading heading = new Heading(List.of("No.", "Date", "Time", "TDS ppm", "EC25 mS/cm", "Temp"));
    assertEquals(OptionalInt.of(1), heading.time());
    assertEquals(OptionalInt.of(2), heading.timeOfDay());
    assertEquals(OptionalInt.of(4), heading.conductivity());
    assertEquals(OptionalInt.of(5), heading.temperature());
    assertTrue(Heading.saysAt25("EC25 mS/cm"));
    assertTrue(!new Heading(List.of("Time", "TDS ppm")).isUseful());
  }

  @Test
  void cutsFieldsAndFindsWhatSeparatesThem() {
    assertEquals(List.of("a", "b,c", "d\"e", ""), Fields.of("a,\"b,c\",\"d\"\"e\",", ','));
    assertEquals(';', Fields.separator(List.of("a;b", "1,5;2")));
    assertEquals('\t', Fields.separator(List.of("a\tb", "1,5\t2,5;x")));
    assertEquals(',', Fields.separator(List.of("a,b", "1,2")));
  }

  @Test
  void linesEndAnyWayAndNeverFillTheMemory() throws Exception {
    LineReader lines =
        new LineReader(new StringReader("a\r\nb\rc\n\n" + "x".repeat(99_999) + "\nz"));
    assertEquals("a", lines.next());
    assertEquals("b", lines.next());
    assertEquals("c", lines.next());
    assertEquals("", lines.next());
    assertEquals(LineReader.LONGEST, String.valueOf(lines.next()).length());
    assertEquals("z", lines.next());
    assertEquals(6, lines.number());
    assertEquals(null, lines.next());
  }
}
