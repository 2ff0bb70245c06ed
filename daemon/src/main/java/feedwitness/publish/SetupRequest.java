package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.engine.ProbeDesk.ProbeDraft;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.PointName;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Reads what the page sends when a probe is set up. */
final class SetupRequest {
  private static final int LONGEST_LINK = 256;
  private static final int LONGEST_NAME = 64;
  private static final int HIGHEST_UNIT = 247;

  /** Above this the linear formula fails within 0 to 50 °C. */
  private static final double STEEPEST_PERCENT_PER_KELVIN = 4;

  private SetupRequest() {}

  /**
   * What to listen to.
   *
   * @param unit bus address, 1 to 247; 0 where there is none
   */
  record Listen(LinkAddress link, String profile, int unit, Duration howLong) {

    /**
     * Reads the body.
     *
     * @throws ProblemException status 422 with the fields at fault
     */
    static Listen read(JsonNode body) {
      BodyFields fields = new BodyFields(body);
      Optional<LinkAddress> link = address(fields, fields.text("link", LONGEST_LINK));
      String profile = fields.text("profile", LONGEST_NAME);
      int unit = fields.whole("unit", 0, HIGHEST_UNIT, 0);
      int seconds = fields.whole("seconds", 1, 10, 3);
      fields.finish();
      return new Listen(link.orElseThrow(), profile, unit, Duration.ofSeconds(seconds));
    }
  }

  /**
   * Reads a new point.
   *
   * @throws ProblemException status 422 with the fields at fault
   */
  static ProbeDraft draft(JsonNode body) {
    BodyFields fields = new BodyFields(body);
    String name = name(fields);
    String title = fields.text("title", LONGEST_NAME);
    Optional<MeasuringPoint.Place> place =
        fields.oneOf("place", Codes.all(MeasuringPoint.Place.class));
    boolean handTyped = fields.flag("hand_typed", false);
    String link = probeText(fields, handTyped, "link", LONGEST_LINK);
    if (!link.isBlank()) {
      address(fields, link);
    }
    String profile = probeText(fields, handTyped, "profile", LONGEST_NAME);
    int unit = fields.whole("unit", 0, HIGHEST_UNIT, 0);
    String symbol = fields.optionalText("conductivity_unit", 8);
    Optional<ConductivityUnit> sent =
        TypedRequest.conductivityUnit(fields, symbol, "conductivity_unit");
    boolean compensates = fields.flag("compensates", false);
    Optional<CompensationChoice> compensation = compensation(fields);
    fields.finish();
    return new ProbeDraft(
        new PointName(name),
        title,
        place.orElseThrow(),
        handTyped,
        link,
        profile,
        unit,
        sent.map(ConductivityUnit::symbol).orElse(""),
        compensates,
        compensation.orElseThrow());
  }

  private static String name(BodyFields fields) {
    String name = fields.text("name", LONGEST_NAME);
    if (!name.isBlank() && !PointName.isValid(name)) {
      String example = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9_-]+", "-");
      fields.fault(
          "name",
          "name %s is not 1 to 32 of a-z, 0-9, - and _, a letter first%s"
              .formatted(
                  Quoted.of(name), PointName.isValid(example) ? "; for example " + example : ""));
    }
    return name;
  }

  private static String probeText(BodyFields fields, boolean handTyped, String name, int longest) {
    return handTyped ? fields.optionalText(name, longest) : fields.text(name, longest);
  }

  private static Optional<LinkAddress> address(BodyFields fields, String text) {
    if (text.isBlank()) {
      return Optional.empty();
    }
    try {
      return Optional.of(LinkAddress.parse(text));
    } catch (IllegalArgumentException e) {
      fields.fault("link", "link " + Quoted.plain(String.valueOf(e.getMessage())));
      return Optional.empty();
    }
  }

  private static Optional<CompensationChoice> compensation(BodyFields fields) {
    double given = fields.optionalNumber("percent_per_kelvin");
    double percent =
        Double.isNaN(given) ? CompensationChoice.Linear.FEED_PERCENT_PER_KELVIN : given;
    if (!(percent > 0 && percent < STEEPEST_PERCENT_PER_KELVIN)) {
      fields.fault(
          "percent_per_kelvin",
          "percent_per_kelvin %s is outside 0 to %s %%/K; nitrate feeds have about 1.88"
              .formatted(percent, STEEPEST_PERCENT_PER_KELVIN));
    }
    Map<String, CompensationChoice> choices =
        new TreeMap<>(
            Map.of(
                "linear", new CompensationChoice.Linear(percent),
                "iso7888", new CompensationChoice.Iso7888(),
                "kcl", new CompensationChoice.Kcl(),
                "none", new CompensationChoice.None()));
    return fields.oneOf("compensation", choices);
  }
}
