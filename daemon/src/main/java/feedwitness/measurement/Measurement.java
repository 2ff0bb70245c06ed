package feedwitness.measurement;

import feedwitness.quality.Flags;
import feedwitness.quality.QualityFlag;
import feedwitness.quantity.PointName;
import feedwitness.quantity.Stamp;
import feedwitness.sample.Contact;
import feedwitness.sample.Indication;
import feedwitness.sample.Sample;
import java.util.Optional;

/**
 * One measurement, or the record that one is missing.
 *
 * @param sample what came from the wire, untouched
 * @param conductivityMilliSiemensPerCm calibrated, as the instrument refers it; NaN if none
 * @param conductivity25MilliSiemensPerCm calibrated and referred to 25 °C; NaN if that is not
 *     possible
 * @param standardUncertaintyMilliSiemensPerCm of the value at 25 °C; NaN if unknown
 * @param temperatureCelsius NaN if none
 * @param basis what made the numbers; the same sample and basis always make the same numbers
 */
public record Measurement(
    Sample sample,
    double conductivityMilliSiemensPerCm,
    double conductivity25MilliSiemensPerCm,
    double standardUncertaintyMilliSiemensPerCm,
    double temperatureCelsius,
    Flags flags,
    Basis basis) {

  /** The same with other flags: what is found out later adds flags and changes no number. */
  public Measurement with(Flags others) {
    return new Measurement(
        sample,
        conductivityMilliSiemensPerCm,
        conductivity25MilliSiemensPerCm,
        standardUncertaintyMilliSiemensPerCm,
        temperatureCelsius,
        others,
        basis);
  }

  public PointName point() {
    return sample.point();
  }

  public Stamp stamp() {
    return sample.stamp();
  }

  /** What a flow or pump contact at the instrument said; empty if there is none. */
  public Optional<Boolean> waterFlows() {
    Contact contact =
        sample instanceof Indication indication ? indication.reading().contact() : Contact.NONE;
    return contact == Contact.NONE ? Optional.empty() : Optional.of(contact == Contact.CLOSED);
  }

  /** Whether the probe was in the liquid of its place, as far as is known: not in a beaker. */
  public boolean isOfItsPlace() {
    return !flags.has(QualityFlag.IN_BEAKER) && !flags.has(QualityFlag.OUT_OF_PLACE);
  }
}
