package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.engine.TypedReading;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.sample.Reading;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** Reads a reading that was typed in. Only its form is judged here, not its plausibility. */
final class TypedRequest {
  private TypedRequest() {}

  /**
   * Reads the body.
   *
   * @throws ProblemException status 422 with the fields at fault
   */
  static TypedReading read(PointName point, JsonNode body) {
    BodyFields fields = new BodyFields(body);
    double conductivity = fields.number("conductivity");
    Optional<ConductivityUnit> unit = conductivityUnit(fields, fields.text("unit", 8), "unit");
    double temperature = fields.optionalNumber("temperature");
    String temperatureUnit = fields.optionalText("temperature_unit", 8);
    Optional<TypedReading.Compensated> compensated =
        fields.oneOf("compensated", Codes.all(TypedReading.Compensated.class));
    Optional<TemperatureUnit> degrees = degrees(fields, temperature, temperatureUnit);
    fields.finish();
    return new TypedReading(
        point,
        new Reading(
            conductivity, unit.orElseThrow(), temperature, degrees.orElse(TemperatureUnit.CELSIUS)),
        compensated.orElseThrow());
  }

  /** A symbol people type; a fault of the field if it is none. Blank has been faulted already. */
  static Optional<ConductivityUnit> conductivityUnit(
      BodyFields fields, String symbol, String field) {
    Optional<ConductivityUnit> unit = ConductivityUnit.parse(symbol);
    if (unit.isEmpty() && !symbol.isBlank()) {
      fields.fault(
          field,
          "%s %s is no unit of conductivity; give one of %s"
              .formatted(
                  field,
                  Quoted.of(symbol),
                  Arrays.stream(ConductivityUnit.values())
                      .map(ConductivityUnit::symbol)
                      .collect(Collectors.joining(", "))));
    }
    return unit;
  }

  private static Optional<TemperatureUnit> degrees(
      BodyFields fields, double temperature, String symbol) {
    Optional<TemperatureUnit> unit = TemperatureUnit.parse(symbol);
    if (symbol.isBlank() && Double.isFinite(temperature)) {
      fields.fault("temperature_unit", "temperature_unit is missing; give °C or °F");
    } else if (unit.isEmpty() && !symbol.isBlank()) {
      fields.fault(
          "temperature_unit",
          "temperature_unit %s is no unit of temperature; give °C or °F"
              .formatted(Quoted.of(symbol)));
    }
    return unit;
  }
}
