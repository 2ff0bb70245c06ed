package feedwitness.acquire;

import static org.junit.jupiter.api.Assertions.fail;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Fields;
import feedwitness.profile.InstrumentFacts;
import feedwitness.profile.Protocol;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.Octets;
import feedwitness.quantity.PointName;
import feedwitness.quantity.SerialSettings;
import feedwitness.quantity.Stamp;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Sample;
import feedwitness.wire.PortOpener;
import feedwitness.wire.SystemPorts;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/** A workbench: profiles, a session running on a thread, and what it delivered. */
final class Bench implements SampleSink, AutoCloseable {
  static final SerialSettings LINE = new SerialSettings(9600, 8, SerialSettings.Parity.NONE, 1);
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  private final List<Sample> delivered = new ArrayList<>();
  private final PortSession session;
  private final Thread thread;
  private int seen;

  Bench(PortPlan plan) {
    this(plan, new SystemPorts());
  }

  Bench(PortPlan plan, PortOpener opener) {
    session = new PortSession(plan, opener, TimeSource.system(), this, WireObserver.NONE);
    thread = new Thread(session, "wire under test");
    thread.start();
  }

  static PortPlan pushed(LinkAddress link, Duration interval) {
    return plan(link, probe("source", lineProfile(Optional.empty(), interval), 0));
  }

  static PortPlan asked(LinkAddress link, String query, Duration interval) {
    return plan(link, probe("drain", lineProfile(Optional.of(Octets.ofText(query)), interval), 0));
  }

  static PortPlan plan(LinkAddress link, ProbePlan... probes) {
    return new PortPlan(link, LINE, List.of(probes));
  }

  static ProbePlan probe(String point, DeviceProfile profile, int unit) {
    return new ProbePlan(new PointName(point), profile, unit);
  }

  private static DeviceProfile lineProfile(Optional<Octets> query, Duration interval) {
    return profile(
        new Protocol.Line(
            query, Pattern.compile("(?<ec>\\d+\\.\\d+),(?<t>\\d+\\.\\d+)"), Optional.empty(), 64),
        new Fields(
            new Fields.Place.Group("ec"),
            ConductivityUnit.MICROSIEMENS_PER_CM,
            Optional.of(new Fields.Place.Group("t")),
            TemperatureUnit.CELSIUS),
        interval);
  }

  /** Register 0: conductivity, 1 µS/cm; register 1: temperature, 0.1 °C; function 4. */
  static DeviceProfile modbusProfile(Duration interval) {
    return profile(
        new Protocol.Modbus(List.of(new Protocol.Read(4, 0, 2))),
        new Fields(
            new Fields.Place.Registers(4, 0, Fields.Type.UINT16, Fields.OctetOrder.ABCD, 1, 0),
            ConductivityUnit.MICROSIEMENS_PER_CM,
            Optional.of(
                new Fields.Place.Registers(
                    4, 1, Fields.Type.INT16, Fields.OctetOrder.ABCD, 0.1, 0)),
            TemperatureUnit.CELSIUS),
        interval);
  }

  private static DeviceProfile profile(Protocol protocol, Fields fields, Duration interval) {
    return new DeviceProfile(
        "bench",
        "for tests",
        LINE,
        protocol,
        fields,
        new InstrumentFacts(
            InstrumentFacts.Compensation.NONE, 0, 20, 0, 50, Double.NaN, Double.NaN, Double.NaN),
        interval,
        Duration.ofMillis(300));
  }

  @Override
  public synchronized void accept(Function<Stamp, Sample> atArrival) {
    delivered.add(atArrival.apply(new Stamp(1, delivered.size() + 1L, System.nanoTime(), 0, true)));
    notifyAll();
  }

  /** The next sample, after those already asked for, that fits. */
  synchronized Sample next(Predicate<Sample> wanted) throws InterruptedException {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (true) {
      while (seen < delivered.size()) {
        Sample sample = delivered.get(seen++);
        if (wanted.test(sample)) {
          return sample;
        }
      }
      long left = Duration.ofNanos(deadline - System.nanoTime()).toMillis();
      if (left <= 0) {
        return fail("waited in vain; delivered: " + delivered);
      }
      wait(left);
    }
  }

  Missing nextMissing() throws InterruptedException {
    return (Missing) next(sample -> sample instanceof Missing);
  }

  Indication nextIndication() throws InterruptedException {
    return (Indication) next(sample -> sample instanceof Indication);
  }

  Indication nextIndication(String point) throws InterruptedException {
    return (Indication) next(s -> s instanceof Indication && s.point().text().equals(point));
  }

  synchronized List<Sample> all() {
    return List.copyOf(delivered);
  }

  @Override
  public void close() throws InterruptedException {
    session.stop();
    thread.join(10_000);
  }
}
