package feedwitness.settings;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Fields;
import feedwitness.profile.InstrumentFacts;
import feedwitness.quantity.ConductivityUnit;
import java.util.Optional;

/** What a point says of its instrument that differs from the profile. */
final class ProfileOverride {
  private ProfileOverride() {}

  static Optional<DeviceProfile> apply(Section point, DeviceProfile profile) {
    Optional<ConductivityUnit> unit = Units.conductivity(point, "conductivity-unit");
    Optional<Boolean> compensates = point.flag("instrument-compensates");
    if (point.has("conductivity-unit") != unit.isPresent()
        || point.has("instrument-compensates") != compensates.isPresent()) {
      return Optional.empty();
    }
    if (unit.isPresent()
        && profile.fields().conductivity() instanceof Fields.Place.Group group
        && group.unitGroup().isPresent()) {
      point.problem(
          "conductivity-unit",
          "'conductivity-unit' has no effect: profile %s reads the unit from each line"
              .formatted(profile.name()),
          "leave it out");
      return Optional.empty();
    }
    Fields fields = unit.map(u -> inUnit(profile.fields(), u)).orElse(profile.fields());
    InstrumentFacts facts =
        compensates.map(c -> compensating(profile.instrument(), c)).orElse(profile.instrument());
    return Optional.of(
        new DeviceProfile(
            profile.name(),
            profile.title(),
            profile.serial(),
            profile.protocol(),
            fields,
            facts,
            profile.interval(),
            profile.longestReply()));
  }

  private static Fields inUnit(Fields fields, ConductivityUnit unit) {
    return new Fields(fields.conductivity(), unit, fields.temperature(), fields.temperatureUnit());
  }

  private static InstrumentFacts compensating(InstrumentFacts facts, boolean compensates) {
    return new InstrumentFacts(
        compensates ? InstrumentFacts.Compensation.TO_25 : InstrumentFacts.Compensation.NONE,
        facts.minMilliSiemensPerCm(),
        facts.maxMilliSiemensPerCm(),
        facts.minCelsius(),
        facts.maxCelsius(),
        facts.resolutionMilliSiemensPerCm(),
        facts.accuracyPercent(),
        facts.temperatureAccuracyKelvin(),
        facts.repeatabilityPercent());
  }
}
