package feedwitness.sample;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.frame.LineText;
import feedwitness.profile.Fields;
import feedwitness.profile.Fields.Place.Group;
import feedwitness.profile.Protocol;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.BoundedMatch.TooHardException;
import feedwitness.sample.DecodeOutcome.Decoded;
import feedwitness.sample.DecodeOutcome.Ignored;
import feedwitness.sample.DecodeOutcome.Refused;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Picks numbers out of text lines by the named groups of the profile's pattern. */
final class LineDecoder implements Decoder {
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?+(?:\\d++(?:[.,]\\d*+)?+|[.,]\\d++)(?:[eE][-+]?+\\d{1,3}+)?+");
  private static final int LONGEST_NUMBER = 40;
  private static final int SHOWN = 60;

  private final Protocol.Line line;
  private final Fields fields;

  LineDecoder(Protocol.Line line, Fields fields) {
    this.line = line;
    this.fields = fields;
  }

  @Override
  public DecodeOutcome decode(List<Frame> frames) {
    if (frames.size() != 1) {
      return unreadable("a reading is one line, not %d".formatted(frames.size()));
    }
    String text = LineText.of(frames.get(0).octets());
    try {
      Optional<Matcher> match = BoundedMatch.of(line.pattern(), text);
      if (match.isPresent()) {
        return read(match.get(), text);
      }
      if (line.ignore().isPresent() && BoundedMatch.of(line.ignore().get(), text).isPresent()) {
        return new Ignored(shown(text));
      }
      return unreadable(
          "%s does not fit the profile's pattern; check profile, baud rate and the instrument's"
                  .formatted(shown(text))
              + " output format");
    } catch (TooHardException e) {
      return unreadable(
          "the profile's pattern takes more than %d steps on %s; write it without a repeat inside a"
                  .formatted(BoundedMatch.STEPS, shown(text))
              + " repeat");
    } catch (NotUnderstoodException e) {
      return unreadable(e.why);
    }
  }

  private DecodeOutcome read(Matcher match, String text) throws NotUnderstoodException {
    Field<ConductivityUnit> conductivity =
        field(
            "conductivity",
            (Group) fields.conductivity(),
            fields.conductivityUnit(),
            ConductivityUnit::parse,
            match,
            text);
    Field<TemperatureUnit> temperature =
        fields.temperature().isEmpty()
            ? new Field<>(Double.NaN, fields.temperatureUnit(), "")
            : field(
                "temperature",
                (Group) fields.temperature().get(),
                fields.temperatureUnit(),
                TemperatureUnit::parse,
                match,
                text);
    return new Decoded(
        new Reading(
            conductivity.value(),
            conductivity.unit(),
            temperature.value(),
            temperature.unit(),
            contact(match)),
        Remarks.join(conductivity.remark(), temperature.remark()));
  }

  private Contact contact(Matcher match) throws NotUnderstoodException {
    if (fields.contact().isEmpty()) {
      return Contact.NONE;
    }
    String text = captured(match, ((Group) fields.contact().get().place()).name());
    return Contacts.of(
        fields.contact().get(), text.isEmpty() ? Double.NaN : number("contact", text));
  }

  private record Field<U>(double value, U unit, String remark) {}

  private static <U> Field<U> field(
      String name,
      Group group,
      U unit,
      Function<String, Optional<U>> units,
      Matcher match,
      String text)
      throws NotUnderstoodException {
    String number = captured(match, group.name());
    double value = number.isEmpty() ? Double.NaN : number(name, number);
    if (Double.isNaN(value)) {
      return new Field<>(value, unit, Remarks.none(name, group, number));
    }
    if (group.unitGroup().isEmpty()) {
      return new Field<>(value, unit, "");
    }
    String symbol = captured(match, group.unitGroup().get());
    return new Field<>(
        value,
        units
            .apply(symbol)
            .orElseThrow(
                () ->
                    new NotUnderstoodException(
                        symbol.isEmpty()
                            ? "%s %s has no unit in %s; a unit is never guessed"
                                .formatted(name, number, shown(text))
                            : "unit '%s' of %s %s is not known; set the instrument to one that is"
                                .formatted(symbol, name, number))),
        "");
  }

  private static String captured(Matcher match, String group) {
    String text = match.group(group);
    return text == null ? "" : text.strip();
  }

  /** A decimal point or a decimal comma; never both, never one that parts thousands. */
  private static double number(String name, String text) throws NotUnderstoodException {
    if (text.equalsIgnoreCase("nan")) {
      return Double.NaN;
    }
    if (text.length() <= LONGEST_NUMBER && NUMBER.matcher(text).matches()) {
      double value = Double.parseDouble(text.replace(',', '.'));
      if (Double.isFinite(value)) {
        return value;
      }
    }
    throw new NotUnderstoodException("%s '%s' is no number".formatted(name, text));
  }

  private static Refused unreadable(String text) {
    return new Refused(Missing.Cause.UNREADABLE, text);
  }

  private static String shown(String text) {
    return "'" + (text.length() > SHOWN ? text.substring(0, SHOWN) + "…" : text) + "'";
  }

  private static final class NotUnderstoodException extends Exception {
    private final String why;

    NotUnderstoodException(String why) {
      super(why, null, false, false);
      this.why = why;
    }
  }
}
