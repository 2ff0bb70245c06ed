package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.BufferedReader;
import java.io.StringReader;
import java.time.Instant;
import java.util.Objects;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Scale;

/** The quick way to read a row and the patient one agree. */
class PlainRowPropertiesTest {
  private static final String HEADER = "time,conductivity_uS_cm,temperature_C";

  @Property(tries = 500)
  void quickAndPatientAgree(
      @ForAll @LongRange(min = 0, max = 4_000_000_000L) long second,
      @ForAll @DoubleRange(min = 0, max = 100_000) @Scale(5) double conductivity,
      @ForAll @DoubleRange(min = -60, max = 60) @Scale(3) double celsius,
      @ForAll @IntRange(min = 0, max = 3) int empty)
      throws Exception {
    String text =
        Instant.ofEpochSecond(second)
            + ","
            + ((empty & 1) == 0 ? new java.math.BigDecimal("" + conductivity).toPlainString() : "")
            + ","
            + ((empty & 2) == 0 ? new java.math.BigDecimal("" + celsius).toPlainString() : "");
    PlainRow plain = new PlainRow(HEADER);
    assertEquals(true, plain.read(text), text);
    CsvRows rows = new CsvRows(new BufferedReader(new StringReader(HEADER + "\n" + text)));
    RecordedRow patient =
        RecordedRow.of(Objects.requireNonNull(rows.next()), RecordedRow.Columns.of(rows));
    assertEquals(Objects.requireNonNull(patient.time()).toEpochMilli(), plain.epochMillis());
    assertEquals(patient.microSiemensPerCm(), plain.microSiemensPerCm());
    assertEquals(patient.celsius(), plain.celsius() + 0.0);
  }
}
