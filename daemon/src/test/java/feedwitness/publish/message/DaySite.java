package feedwitness.publish.message;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Fields;
import feedwitness.profile.InstrumentFacts;
import feedwitness.profile.Protocol;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.PointName;
import feedwitness.quantity.SerialSettings;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.site.CompensationChoice;
import feedwitness.site.MeasuringPoint;
import feedwitness.site.ProbeMount;
import feedwitness.site.Site;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Quarry End with one probe in the glasshouse line. */
final class DaySite {
  private DaySite() {}

  static Site withLine(ZoneId zone) {
    DeviceProfile profile =
        new DeviceProfile(
            "line-push",
            "Pushes lines of text",
            new SerialSettings(9600, 8, SerialSettings.Parity.NONE, 1),
            new Protocol.Line(
                Optional.empty(), Pattern.compile("(?<ec>[0-9.]+)"), Optional.empty(), 64),
            new Fields(
                new Fields.Place.Group("ec"),
                ConductivityUnit.MILLISIEMENS_PER_CM,
                Optional.empty(),
                TemperatureUnit.CELSIUS),
            new InstrumentFacts(
                InstrumentFacts.Compensation.NONE, 0.01, 20, 0, 50, 0.001, 1.5, 0.3),
            Duration.ofSeconds(1),
            Duration.ofSeconds(1));
    return new Site(
        "Quarry End Nursery",
        zone,
        List.of(
            new MeasuringPoint(
                new PointName("line"),
                "Glasshouse line",
                MeasuringPoint.Place.LINE,
                Optional.of(
                    new ProbeMount(
                        new LinkAddress.Serial("/dev/serial/by-id/usb-line"), profile, 0)),
                new CompensationChoice.Linear(1.88))));
  }
}
