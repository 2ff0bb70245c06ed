package feedwitness.engine;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TemperatureUnit;
import java.util.List;

/**
 * Readings of one point that were recorded elsewhere.
 *
 * @param rows 1 to {@link #MOST_ROWS}, in the order of the file they come from
 * @param compensated what their instrument had done about temperature
 * @param allowFuture whether times after now are taken
 */
public record ImportBatch(
    PointName point,
    ConductivityUnit conductivityUnit,
    TemperatureUnit temperatureUnit,
    TypedReading.Compensated compensated,
    boolean allowFuture,
    List<Row> rows) {
  /** As many as fit into a request. */
  public static final int MOST_ROWS = 1_000;

  /** Clocks differ: so much later than ours is not the future yet. */
  public static final long FUTURE_MILLIS = 60_000;

  public ImportBatch {
    rows = List.copyOf(rows);
  }

  /**
   * One reading.
   *
   * @param millis since 1970 UTC
   * @param conductivity in the unit of the batch, ≥ 0
   * @param temperature in the unit of the batch; NaN if there is none
   */
  public record Row(long millis, double conductivity, double temperature) {}
}
