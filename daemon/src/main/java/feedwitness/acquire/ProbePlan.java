package feedwitness.acquire;

import feedwitness.profile.DeviceProfile;
import feedwitness.quantity.PointName;

/**
 * One probe on a wire.
 *
 * @param unit Modbus unit address, 1 to 247; 0 where the protocol has none
 */
public record ProbePlan(PointName point, DeviceProfile profile, int unit) {}
