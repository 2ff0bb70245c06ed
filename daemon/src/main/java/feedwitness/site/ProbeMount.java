package feedwitness.site;

import feedwitness.profile.DeviceProfile;
import feedwitness.quantity.LinkAddress;

/**
 * A probe at a point.
 *
 * @param unit Modbus unit address, 1 to 247; 0 where the protocol has none
 */
public record ProbeMount(LinkAddress link, DeviceProfile profile, int unit) {}
