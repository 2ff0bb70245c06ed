package feedwitness.app;

import feedwitness.acquire.SessionPool;
import feedwitness.engine.AlarmWatch;
import feedwitness.engine.Engine;
import feedwitness.engine.Importer;
import feedwitness.engine.Intake;
import feedwitness.engine.ServiceState;
import feedwitness.host.ClockTrust;
import feedwitness.host.DiskRoom;
import feedwitness.publish.WebServer;
import feedwitness.quantity.TimeSource;
import feedwitness.settings.Config;
import feedwitness.settings.ConfigFiles;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import feedwitness.wire.PortCatalog;
import feedwitness.wire.PortOpener;
import java.net.URI;
import java.time.Duration;

/** Puts a service together by hand, starts it in order and stops it in the opposite order. */
final class Wiring {
  private Wiring() {}

  /**
   * What a service is given of the outside.
   *
   * @param clock stamps samples; runs fast in a demo
   * @param trust whether the clock is right
   * @param pace how many times faster than real instruments and clock run
   */
  record Surroundings(
      TimeSource clock, ClockTrust trust, double pace, PortOpener opener, PortCatalog catalog) {}

  /** What came of a start. */
  sealed interface Outcome {
    record Started(Service service) implements Outcome {}

    /** Nothing is left running. */
    record Refused(String message) implements Outcome {}
  }

  /** A running service. */
  record Service(URI page, Engine engine, H2Ledger ledger, SessionPool sessions, WebServer server)
      implements AutoCloseable {

    /** No more requests, then no more octets, then the last measurements, then the store. */
    @Override
    public void close() {
      server.close();
      sessions.close();
      engine.close();
      ledger.close();
    }
  }

  static Outcome start(Config config, ConfigFiles files, Surroundings around) {
    LedgerOpening opening =
        H2Ledger.open(
            new StoreSettings(
                config.storeDirectory(),
                config.syncEvery(),
                StoreSettings.DEFAULT_QUEUE,
                config.freeFloor(),
                config.keepRaw()),
            around.clock(),
            new DiskRoom(config.storeDirectory()));
    if (opening instanceof LedgerOpening.Refused refused) {
      return new Outcome.Refused(refused.message());
    }
    H2Ledger ledger = ((LedgerOpening.Opened) opening).ledger();
    Intake intake = new Intake(ledger.boot(), around.clock(), around.trust());
    Engine engine =
        new Engine(
            ledger.boot(), Version.text(), config.site(), intake, ledger, ledger, around.clock());
    AlarmWatch alarms = alarms(engine, ledger, config, around.pace());
    engine.watch(alarms);
    SessionPool sessions = new SessionPool(around.opener(), TimeSource.system(), intake);
    PageProbeDesk desk =
        new PageProbeDesk(
            files,
            around,
            changed -> {
              engine.follow(changed.site());
              sessions.follow(PortPlans.of(changed.site(), around.pace()));
            });
    ServiceData data =
        new ServiceData(
            new Importer(intake, engine, ledger, around.clock(), ledger::halted),
            engine,
            ledger,
            config.storeDirectory());
    WebServer server = new WebServer(engine, ledger, desk, data, alarms, ledger, config.listen());
    engine.start();
    WebServer.Outcome outcome = server.start();
    if (outcome instanceof WebServer.Outcome.Refused refused) {
      engine.close();
      ledger.close();
      return new Outcome.Refused(refused.why());
    }
    sessions.follow(PortPlans.of(config.site(), around.pace()));
    URI page = ((WebServer.Outcome.Started) outcome).url();
    ledger.announce(page.toString());
    return new Outcome.Started(new Service(page, engine, ledger, sessions, server));
  }

  private static AlarmWatch alarms(Engine engine, H2Ledger ledger, Config config, double pace) {
    Duration usual = ServiceState.USUAL_SILENCE;
    return new AlarmWatch(
        engine,
        engine::stampNow,
        ledger,
        ledger,
        new ServiceState(
            ledger::halted,
            new DiskRoom(config.storeDirectory()),
            config.freeFloor(),
            Duration.ofMillis((long) (usual.toMillis() * pace))),
        engine::dates);
  }
}
