package feedwitness.site;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Protocol;
import feedwitness.quantity.LinkAddress;

/**
 * A probe at a point.
 *
 * @param unit Modbus unit address, 1 to 247; 0 where the protocol has none
 */
public record ProbeMount(LinkAddress link, DeviceProfile profile, int unit) {
  private static final int LAST_UNIT = 247;

  /**
   * Checks the unit against the profile's protocol.
   *
   * @throws IllegalArgumentException naming the unit and its limits
   */
  public ProbeMount {
    boolean bus = profile.protocol() instanceof Protocol.Modbus;
    if (bus && (unit < 1 || unit > LAST_UNIT)) {
      throw new IllegalArgumentException(
          "Modbus address %d is outside 1 to %d".formatted(unit, LAST_UNIT));
    }
    if (!bus && unit != 0) {
      throw new IllegalArgumentException(
          "profile %s takes no Modbus address, but %d was given".formatted(profile.name(), unit));
    }
  }
}
