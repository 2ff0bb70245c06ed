package feedwitness.publish;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import feedwitness.engine.AlarmWatch;
import feedwitness.engine.FeedLineWatch;
import feedwitness.quantity.ListenAddress;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** The real server over a nursery in memory, on a free port, for one test. */
final class RunningServer implements BeforeEachCallback, AfterEachCallback {
  private final FixtureNursery nursery = new FixtureNursery();
  private final FixtureDesk desk = new FixtureDesk();
  private final FixtureData data = new FixtureData(nursery);
  private final FixtureMessages messages = new FixtureMessages();
  private final FixtureBook book = new FixtureBook();
  private final FixtureAccess access = new FixtureAccess(book);
  private final FixtureEvidence evidence = new FixtureEvidence();
  private final AlarmWatch alarms = nursery.watch(evidence);
  private final FeedLineWatch lines = nursery.lines(evidence, alarms);
  private final WebServer server;
  private int port;

  RunningServer() {
    this(StreamLimits.USUAL);
  }

  RunningServer(StreamLimits limits) {
    this.server =
        new WebServer(
            new Desks(
                nursery,
                nursery,
                desk,
                data,
                alarms,
                evidence,
                messages,
                nursery.checks(evidence),
                lines),
            access.closed(new ListenAddress("127.0.0.1", 0)),
            Optional.empty(),
            limits);
  }

  @Override
  public void beforeEach(ExtensionContext context) {
    port = assertInstanceOf(WebServer.Outcome.Started.class, server.start()).port();
  }

  @Override
  public void afterEach(ExtensionContext context) {
    server.close();
  }

  FixtureNursery nursery() {
    return nursery;
  }

  FixtureEvidence evidence() {
    return evidence;
  }

  AlarmWatch alarms() {
    return alarms;
  }

  /** Seconds go by, with a tick each. */
  void pass(int seconds) {
    for (int i = 0; i < seconds; i++) {
      nursery.wait(Duration.ofSeconds(1));
      alarms.tick(nursery.stampNow());
    }
  }

  /** Irrigation events, one every half hour: five minutes of feed that comes cool, then rest. */
  void water(int events, double milliSiemensPerCm) {
    double source = 0.46;
    for (int event = 0; event < events; event++) {
      for (int since = 0; since < 1800; since += 10) {
        boolean flows = since < 300;
        double celsius =
            flows ? 12 + 8 * Math.exp(-since / 12.0) : 20 - 8 * Math.exp((300 - since) / 1500.0);
        double settling = flows ? 1 - 0.15 * Math.exp(-since / 10.0) : 1;
        double scatter = 1 + 0.001 * ((since / 10 * 7 + event * 3) % 5 - 2);
        double at25 = (source + (milliSiemensPerCm - source) * settling) * scatter;
        nursery.indicate(FixtureNursery.LINE, at25 * (1 + 0.0188 * (celsius - 25)), celsius);
        nursery.wait(Duration.ofSeconds(10));
      }
      nursery.indicate(FixtureNursery.SOURCE, 0.342, 12);
      alarms.tick(nursery.stampNow());
    }
  }

  FixtureDesk desk() {
    return desk;
  }

  FixtureMessages messages() {
    return messages;
  }

  FixtureBook book() {
    return book;
  }

  WebServer server() {
    return server;
  }

  int port() {
    return port;
  }

  TestClient client() {
    return new TestClient(port);
  }
}
