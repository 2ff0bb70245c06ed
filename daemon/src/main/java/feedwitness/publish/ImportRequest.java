package feedwitness.publish;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import feedwitness.engine.ImportBatch;
import feedwitness.engine.TypedReading;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TemperatureUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads and writes rows that are to be imported. Only their form is judged here. */
final class ImportRequest {
  private ImportRequest() {}

  /**
   * Reads the body.
   *
   * @throws ProblemException status 422 with the fields at fault
   */
  static ImportBatch read(PointName point, JsonNode body) {
    BodyFields fields = new BodyFields(body);
    Optional<ConductivityUnit> unit =
        TypedRequest.conductivityUnit(fields, fields.text("unit", 8), "unit");
    String degrees = fields.text("temperature_unit", 8);
    Optional<TemperatureUnit> temperatureUnit = TemperatureUnit.parse(degrees);
    if (temperatureUnit.isEmpty() && !degrees.isBlank()) {
      fields.fault("temperature_unit", "temperature_unit is neither °C nor °F");
    }
    Optional<TypedReading.Compensated> compensated =
        fields.oneOf("compensated", Codes.all(TypedReading.Compensated.class));
    boolean allowFuture = fields.flag("allow_future", false);
    List<ImportBatch.Row> rows = rows(fields);
    fields.finish();
    return new ImportBatch(
        point,
        unit.orElseThrow(),
        temperatureUnit.orElseThrow(),
        compensated.orElseThrow(),
        allowFuture,
        rows);
  }

  private static List<ImportBatch.Row> rows(BodyFields fields) {
    List<ImportBatch.Row> rows = new ArrayList<>();
    for (JsonNode row : fields.list("rows", ImportBatch.MOST_ROWS)) {
      boolean sound =
          row.isArray()
              && row.size() == 3
              && row.get(0).canConvertToLong()
              && row.get(0).isIntegralNumber()
              && row.get(1).isNumber()
              && (row.get(2).isNumber() || row.get(2).isNull());
      if (!sound) {
        fields.fault(
            "rows",
            "row %d is not [milliseconds since 1970, conductivity, temperature or null]"
                .formatted(rows.size() + 1));
        return List.of();
      }
      rows.add(
          new ImportBatch.Row(
              row.get(0).longValue(),
              row.get(1).doubleValue(),
              row.get(2).isNull() ? Double.NaN : row.get(2).doubleValue()));
    }
    return rows;
  }

  /** The body of a request that {@link #read} reads. */
  static byte[] write(ImportBatch batch) {
    ObjectNode body = JsonNodeFactory.instance.objectNode();
    body.put("unit", batch.conductivityUnit().symbol());
    body.put("temperature_unit", batch.temperatureUnit().symbol());
    body.put("compensated", Codes.of(batch.compensated()));
    body.put("allow_future", batch.allowFuture());
    ArrayNode rows = body.putArray("rows");
    for (ImportBatch.Row row : batch.rows()) {
      ArrayNode one = rows.addArray().add(row.millis()).add(row.conductivity());
      if (Double.isNaN(row.temperature())) {
        one.addNull();
      } else {
        one.add(row.temperature());
      }
    }
    return Json.bytes(body);
  }
}
