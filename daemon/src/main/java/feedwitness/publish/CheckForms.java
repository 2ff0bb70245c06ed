package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.check.CheckReply;
import feedwitness.check.CheckSubject;
import feedwitness.check.Comparisons;
import feedwitness.check.Instrument;
import feedwitness.check.Thermometer;
import feedwitness.engine.CheckBench;
import feedwitness.quantity.PointName;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What people say about a check, read out of a request. */
final class CheckForms {
  private static final int LONGEST_WHO = AlarmRoutes.LONGEST_WHO;
  private static final int LONGEST_NOTE = 1000;
  private static final int MOST_STANDARDS = 2;
  private static final Map<String, Deed> DEEDS = Codes.all(Deed.class);
  private static final Map<String, Against> AGAINST = Codes.all(Against.class);

  private CheckForms() {}

  /** What can be done. */
  enum Deed {
    RINSED,
    IMMERSED,
    TEMPERATURE,
    READING,
    REALLY_THAT,
    WRONG_BOTTLE,
    CLEANED,
    ADJUST,
    ADJUSTED_BY_INSTRUMENT,
    FINISH,
    ABANDON,
    RETURNED,
    REPLACED,
    UNDO
  }

  /** What a probe is compared with. */
  enum Against {
    GRAB_SAMPLE,
    THERMOMETER
  }

  static CheckBench.Wish wish(CheckSubject subject, JsonNode body) {
    BodyFields fields = new BodyFields(body);
    String who = fields.text("who", LONGEST_WHO);
    List<String> standards = new ArrayList<>();
    for (JsonNode each : fields.list("standards", MOST_STANDARDS)) {
      if (each.isTextual()) {
        standards.add(each.textValue());
      } else {
        fields.fault("standards", "standards must be names of bottles on the shelf, in quotes");
      }
    }
    double tolerance = fields.optionalNumber("tolerance_percent");
    boolean confirmed = fields.flag("confirmed", false);
    Instrument handheld =
        subject.kind() == CheckSubject.Kind.METER
            ? Instrument.handheld(
                positive(fields, "resolution_mS_cm"),
                fields.flag("compensates", true),
                positive(fields, "coefficient_percent"))
            : Instrument.handheld(Double.NaN, true, Double.NaN);
    fields.finish();
    return new CheckBench.Wish(subject, who, standards, tolerance, handheld, confirmed);
  }

  private static double positive(BodyFields fields, String name) {
    double number = fields.optionalNumber(name);
    if (number <= 0 || number > 10) {
      fields.fault(name, "%s %s is not above 0 and at most 10".formatted(name, number));
    }
    return number;
  }

  /** A step as it was said. */
  record Step(
      Deed deed, String who, String note, double conductivity, double celsius, double accuracy) {

    CheckReply on(CheckBench bench, CheckSubject subject) throws IOException {
      return switch (deed) {
        case ADJUST -> bench.adjust(subject, who, false);
        case ADJUSTED_BY_INSTRUMENT -> bench.adjust(subject, who, true);
        case UNDO -> bench.undo(subject, who);
        case RETURNED -> bench.returned(subject, who);
        case REPLACED -> bench.replaced(subject, who, note);
        default -> bench.act(subject, inSession());
      };
    }

    private CheckBench.Deed inSession() {
      return (session, now) ->
          switch (deed) {
            case RINSED -> session.rinsed(now);
            case IMMERSED -> session.immersed(now);
            case TEMPERATURE -> session.temperature(new Thermometer(celsius, accuracy), now);
            case READING -> session.typed(conductivity, celsius, now);
            case REALLY_THAT -> session.reallyThat(now);
            case WRONG_BOTTLE -> session.wrongBottle(now);
            case CLEANED -> session.cleaned(who, note, now);
            case FINISH -> session.finish(who, now);
            case ABANDON -> session.abandon(who, note, now);
            case ADJUST, ADJUSTED_BY_INSTRUMENT, UNDO, RETURNED, REPLACED ->
                throw new IllegalStateException(deed + " is no step of a session");
          };
    }
  }

  static Step step(JsonNode body) {
    BodyFields fields = new BodyFields(body);
    String who = fields.text("who", LONGEST_WHO);
    Optional<Deed> deed = fields.oneOf("step", DEEDS);
    String note = fields.optionalLines("note", LONGEST_NOTE);
    boolean typed = deed.equals(Optional.of(Deed.READING));
    boolean warm = deed.equals(Optional.of(Deed.TEMPERATURE));
    double conductivity =
        typed ? fields.number("conductivity_mS_cm") : fields.optionalNumber("conductivity_mS_cm");
    double celsius =
        typed || warm ? fields.number("temperature_c") : fields.optionalNumber("temperature_c");
    double accuracy = fields.optionalNumber("accuracy_k");
    fields.finish();
    return new Step(deed.orElseThrow(), who, note, conductivity, celsius, accuracy);
  }

  /** A comparison as it was said. */
  record Comparison(
      Against against,
      String who,
      String name,
      double conductivity,
      double celsius,
      double accuracy) {

    Comparisons.Outcome on(CheckBench bench, CheckSubject subject) throws IOException {
      return switch (against) {
        case GRAB_SAMPLE -> bench.compareSample(subject, name, conductivity, celsius, who);
        case THERMOMETER -> bench.compareThermometer(subject, name, celsius, accuracy, who);
      };
    }
  }

  static Comparison comparison(JsonNode body) {
    BodyFields fields = new BodyFields(body);
    String who = fields.text("who", LONGEST_WHO);
    Optional<Against> against = fields.oneOf("against", AGAINST);
    boolean sample = against.equals(Optional.of(Against.GRAB_SAMPLE));
    String name = fields.text("name", LONGEST_WHO);
    if (sample && !name.isBlank() && !PointName.isValid(name)) {
      fields.fault("name", "name of a meter must be 1 to 32 of a-z, 0-9, - and _, a letter first");
    }
    double conductivity =
        sample
            ? fields.number("conductivity25_mS_cm")
            : fields.optionalNumber("conductivity25_mS_cm");
    double celsius = fields.number("temperature_c");
    double accuracy = fields.optionalNumber("accuracy_k");
    if (accuracy <= 0 || accuracy > 5) {
      fields.fault(
          "accuracy_k", "accuracy_k %s is not above 0 and at most 5 K".formatted(accuracy));
    }
    fields.finish();
    return new Comparison(against.orElseThrow(), who, name, conductivity, celsius, accuracy);
  }
}
