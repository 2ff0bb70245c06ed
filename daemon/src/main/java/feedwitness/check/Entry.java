package feedwitness.check;

import java.time.Instant;

/**
 * What every kept fact carries.
 *
 * @param check names the check it belongs to; empty for one that belongs to none
 * @param at wall time
 * @param author who did it
 */
public record Entry(String check, CheckSubject subject, Instant at, String author) {

  FieldWriter write() {
    return new FieldWriter()
        .put("check", check)
        .put("subject", subject.toText())
        .put("at", at)
        .put("author", author);
  }

  static Entry read(FieldReader fields) {
    return new Entry(
        fields.text("check"),
        fields.read("subject", CheckSubject::parse),
        fields.instant("at"),
        fields.text("author"));
  }
}
