package feedwitness.publish.access;

import feedwitness.quantity.TimeSource;
import java.net.InetAddress;
import java.time.Duration;
import java.util.Optional;
import org.tinylog.Logger;

/** Shows codes to those who may act, and takes them from those who are not in yet. */
public final class PairingDesk {
  private final PairingCodes codes;
  private final Throttle throttle;
  private final Devices devices;

  PairingDesk(TimeSource clock, Throttle throttle, Devices devices) {
    this.codes = new PairingCodes(clock, new Secrets());
    this.throttle = throttle;
    this.devices = devices;
  }

  /** How long a code is good. */
  public static Duration validity() {
    return PairingCodes.VALID;
  }

  /** A new code of 8 digits that lets one device in. */
  public String offer(Role role, Caller by) {
    return codes.offer(role, by.name());
  }

  /**
   * Somebody typed a code.
   *
   * @param typed digits, with whatever blanks and dashes a person puts between them
   */
  public PairingOutcome redeem(String typed, String name, InetAddress from) {
    Judged judged = judge(typed.replaceAll("[\\s-]+", ""), Devices.tidy(name), from);
    if (judged.refusal.isPresent()) {
      return judged.refusal.get();
    }
    PairingCodes.Waiting code = judged.code.orElseThrow();
    Devices.Pairing made = devices.pair(Devices.tidy(name), code.role(), code.by());
    return made instanceof Devices.Pairing.Done done
        ? new PairingOutcome.Paired(done.device(), done.token())
        : refused((Devices.Pairing.Refused) made);
  }

  private record Judged(Optional<PairingCodes.Waiting> code, Optional<PairingOutcome> refusal) {
    static Judged not(PairingOutcome why) {
      return new Judged(Optional.empty(), Optional.of(why));
    }
  }

  /** One at a time: a guess counts before the next is looked at. Never waits for the disk. */
  private synchronized Judged judge(String code, String name, InetAddress from) {
    Duration wait = throttle.wait(from);
    if (!wait.isZero()) {
      return Judged.not(new PairingOutcome.TooMany(wait));
    }
    Optional<PairingCodes.Waiting> found = codes.find(code);
    if (found.isEmpty()) {
      throttle.missed(from);
      Logger.warn("a wrong pairing code was typed at {}", from.getHostAddress());
      return Judged.not(
          new PairingOutcome.Refused(
              "code",
              "this code is wrong, used or older than %d minutes; let a new one be shown at the desk"
                  .formatted(PairingCodes.VALID.toMinutes())));
    }
    Optional<Devices.Pairing.Refused> fault = devices.faultOf(name);
    if (fault.isPresent()) {
      return Judged.not(refused(fault.get()));
    }
    codes.use(found.get());
    return new Judged(found, Optional.empty());
  }

  private static PairingOutcome refused(Devices.Pairing.Refused why) {
    return new PairingOutcome.Refused(why.field(), why.message());
  }
}
