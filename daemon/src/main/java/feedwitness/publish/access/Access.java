package feedwitness.publish.access;

import feedwitness.quantity.TimeSource;
import java.net.InetAddress;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Decides who a request comes from. */
public final class Access {
  static final String BEARER = "Bearer ";

  private final AccessSettings settings;
  private final Devices devices;
  private final AuditTrail audit;
  private final TimeSource clock;
  private final Throttle throttle;
  private final PairingDesk pairing;
  private final Supplier<List<String>> trouble;

  /**
   * Ready to decide.
   *
   * @param clock of the machine, not of a demo: codes and waits are meant for people
   * @param trouble what is wrong with the way in, such as a certificate that ends soon
   */
  public Access(
      AccessSettings settings,
      Devices devices,
      AuditTrail audit,
      TimeSource clock,
      Supplier<List<String>> trouble) {
    this.settings = settings;
    this.devices = devices;
    this.audit = audit;
    this.clock = clock;
    this.throttle = new Throttle(clock);
    this.pairing = new PairingDesk(clock, throttle, devices);
    this.trouble = trouble;
  }

  /** From where the page may be used. */
  public AccessSettings settings() {
    return settings;
  }

  /** What is paired. */
  public Devices devices() {
    return devices;
  }

  /** Where who did what is recorded. */
  public AuditTrail audit() {
    return audit;
  }

  /** Where codes are shown and taken. */
  public PairingDesk pairing() {
    return pairing;
  }

  /** What is wrong with the way in, in words. */
  public List<String> trouble() {
    return trouble.get();
  }

  /** Who is asking. */
  public sealed interface Verdict {
    record Known(Caller caller) implements Verdict {}

    /** Nobody known. */
    record Stranger() implements Verdict {}

    /** Guessed at the access key too often. */
    record Waits(Duration left) implements Verdict {}
  }

  /**
   * Judges a request.
   *
   * @param authorization the header; empty if there is none
   * @param token what its cookie holds; empty if there is none
   */
  public Verdict judge(Arrival arrival, String authorization, String token) {
    if (isDesk(arrival)) {
      return new Verdict.Known(Caller.DESK);
    }
    if (settings.key().isEmpty()) {
      return new Verdict.Stranger();
    }
    if (authorization.startsWith(BEARER)) {
      return judgeKey(settings.key().get(), authorization, guesser(arrival));
    }
    Optional<Device> device = token.isEmpty() ? Optional.empty() : devices.byToken(token);
    device.ifPresent(known -> devices.saw(known, clock.wall()));
    return device
        .<Verdict>map(known -> new Verdict.Known(Caller.of(known)))
        .orElseGet(Verdict.Stranger::new);
  }

  private Verdict judgeKey(AccessKey key, String authorization, InetAddress from) {
    Duration wait = throttle.wait(from);
    if (!wait.isZero()) {
      return new Verdict.Waits(wait);
    }
    if (key.is(authorization.substring(BEARER.length()).strip())) {
      return new Verdict.Known(Caller.COMMAND_LINE);
    }
    throttle.missed(from);
    return new Verdict.Stranger();
  }

  /**
   * Somebody at this machine. A proxy on it connects from loopback as well: a request that was
   * handed on or calls the service by another name is not from the desk, and with {@code
   * behind-proxy} none is.
   */
  private boolean isDesk(Arrival arrival) {
    return !settings.behindProxy()
        && settings.own().test(arrival.peer())
        && settings.own().test(arrival.here())
        && !arrival.forwarded()
        && arrival.loopbackName();
  }

  /**
   * Who is counted as guessing. What a proxy says of its client is believed for this only, and only
   * of one that was announced and is on this machine.
   */
  public InetAddress guesser(Arrival arrival) {
    return settings.behindProxy() && settings.own().test(arrival.peer())
        ? arrival.nearest().orElse(arrival.peer())
        : arrival.peer();
  }

  /** Whether a caller would still be let in. */
  public boolean admits(Caller caller) {
    return caller.kind() != Caller.Kind.DEVICE || devices.isPaired(caller.device());
  }
}
