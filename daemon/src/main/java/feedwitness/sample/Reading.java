package feedwitness.sample;

import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.TemperatureUnit;

/**
 * The numbers of one message, untouched.
 *
 * @param conductivity in {@code conductivityUnit}; NaN if the instrument sent none or no number
 * @param temperature in {@code temperatureUnit}; NaN if the instrument sent none or no number
 * @param contact of a flow switch or pump
 */
public record Reading(
    double conductivity,
    ConductivityUnit conductivityUnit,
    double temperature,
    TemperatureUnit temperatureUnit,
    Contact contact) {

  /** Of an instrument without a contact. */
  public Reading(
      double conductivity,
      ConductivityUnit conductivityUnit,
      double temperature,
      TemperatureUnit temperatureUnit) {
    this(conductivity, conductivityUnit, temperature, temperatureUnit, Contact.NONE);
  }

  /** Conductivity in mS/cm as indicated; NaN if none. */
  public double conductivityMilliSiemensPerCm() {
    return conductivityUnit.toMilliSiemensPerCm(conductivity);
  }

  /** Temperature in °C as indicated; NaN if none. */
  public double temperatureCelsius() {
    return temperatureUnit.toCelsius(temperature);
  }
}
