package feedwitness.app.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Whatever stands in a table. */
class TablePropertiesTest {
  @Property(tries = 300)
  void anyFieldIsUnderstoodOrRefusedButNeverThrows(@ForAll String field) {
    NumberEvidence numbers = new NumberEvidence();
    numbers.add(field);
    TimeEvidence times = new TimeEvidence();
    times.add(field);
    NumberStyle.COMMA.parse(field);
    TimeReader.Read read =
        new TimeReader(DateOrder.MONTH_FIRST, ZoneId.of("Europe/London")).read(field);
    assertEquals(read.time().isEmpty(), !read.why().isEmpty());
    new Tally().add("kind", 1, field);
    assertTrue(Fields.of(field, ',').size() >= 1);
  }
}
