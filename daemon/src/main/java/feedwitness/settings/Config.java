package feedwitness.settings;

import feedwitness.profile.DeviceProfile;
import feedwitness.quantity.ListenAddress;
import feedwitness.site.MessagePlan;
import feedwitness.site.Site;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * All the service is told.
 *
 * @param site the place; a point's profile already carries what the point says otherwise (its unit,
 *     whether the instrument compensates)
 * @param listen where the page is served
 * @param web how others reach the page
 * @param storeDirectory absolute
 * @param syncEvery how often measurements are forced to disk, 1 to 60 s: as much is lost at most
 *     when the power fails
 * @param freeFloor octets the disk must have free for recording
 * @param keepRaw how long single readings are kept; empty for ever
 * @param clock when the machine's clock is believed
 * @param messages how people are reached
 * @param checks how probes are checked, and the standards on the shelf
 * @param profiles all that could be used, ours and the user's own, by name
 */
public record Config(
    Site site,
    ListenAddress listen,
    WebSettings web,
    Path storeDirectory,
    Duration syncEvery,
    long freeFloor,
    Optional<Duration> keepRaw,
    ClockChoice clock,
    MessagePlan messages,
    CheckRules checks,
    List<DeviceProfile> profiles) {
  public Config {
    profiles = List.copyOf(profiles);
  }

  /** The same but for what the command line says otherwise; null leaves it as it is. */
  public Config with(@Nullable ListenAddress otherListen, @Nullable Path otherStore) {
    return new Config(
        site,
        otherListen == null ? listen : otherListen,
        web,
        otherStore == null ? storeDirectory : otherStore,
        syncEvery,
        freeFloor,
        keepRaw,
        clock,
        messages,
        checks,
        profiles);
  }

  /** The same, with a clock that is to be believed otherwise. */
  public Config with(ClockChoice otherClock) {
    return new Config(
        site,
        listen,
        web,
        storeDirectory,
        syncEvery,
        freeFloor,
        keepRaw,
        otherClock,
        messages,
        checks,
        profiles);
  }
}
