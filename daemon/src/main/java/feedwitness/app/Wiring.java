package feedwitness.app;

import feedwitness.acquire.SessionPool;
import feedwitness.engine.AlarmWatch;
import feedwitness.engine.CheckWatch;
import feedwitness.engine.Engine;
import feedwitness.engine.FeedLineWatch;
import feedwitness.engine.Hindsight;
import feedwitness.engine.Importer;
import feedwitness.engine.Intake;
import feedwitness.engine.ServiceState;
import feedwitness.host.ClockTrust;
import feedwitness.host.DiskRoom;
import feedwitness.ledger.Afterthoughts;
import feedwitness.ledger.History;
import feedwitness.ledger.QualifiedHistory;
import feedwitness.publish.Desks;
import feedwitness.publish.WebServer;
import feedwitness.publish.message.AlarmNotices;
import feedwitness.publish.message.Messages;
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
import java.util.List;
import java.util.SplittableRandom;

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

  /**
   * A running service.
   *
   * @param notes what is less than the configuration asks for
   */
  record Service(
      URI page,
      List<String> notes,
      Engine engine,
      FeedLineWatch lines,
      H2Ledger ledger,
      SessionPool sessions,
      Messages messages,
      WebServer server)
      implements AutoCloseable {
    Service {
      notes = List.copyOf(notes);
    }

    /** No more requests, messages, octets, then the last measurements, then the store. */
    @Override
    public void close() {
      server.close();
      messages.close();
      sessions.close();
      engine.close();
      lines.keep();
      ledger.close();
    }
  }

  static Outcome start(Config config, ConfigFiles files, Surroundings around) {
    WayIn.Outcome looked = WayIn.of(config, around.trust()::trusted);
    if (looked instanceof WayIn.Outcome.Refused refused) {
      return new Outcome.Refused(refused.message());
    }
    WayIn way = ((WayIn.Outcome.Ready) looked).way();
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
    Afterthoughts later = new Afterthoughts();
    later.load(ledger);
    History history = new QualifiedHistory(ledger, later);
    Engine engine =
        new Engine(
            ledger.boot(),
            Version.text(),
            config.site(),
            intake,
            ledger,
            history,
            around.clock(),
            new Hindsight(ledger, ledger, later, intake::moment));
    AlarmWatch alarms = alarms(engine, ledger, config, around.pace());
    CheckWatch checks = Checks.watch(config.checks(), engine, alarms, ledger, history, later);
    engine.markBy(checks::marked);
    alarms.suppressBy(checks::aside);
    engine.watch(checks);
    engine.watch(alarms);
    FeedLineWatch lines =
        new FeedLineWatch(config.site(), engine::stampNow, ledger, ledger, ledger, alarms::report);
    engine.watch(lines);
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
            config.storeDirectory(),
            files);
    Messages messages =
        new Messages(
            config.messages(),
            new Messages.Around(
                ledger,
                ledger,
                ledger,
                intake::moment,
                engine::site,
                around.clock(),
                new SplittableRandom()));
    alarms.subscribe(event -> AlarmNotices.of(event).ifPresent(messages::tell));
    WebServer server =
        new WebServer(
            new Desks(engine, history, desk, data, alarms, ledger, messages, checks, lines),
            way.access(ledger, draft -> ledger.append(intake.moment(), draft)),
            way.tls());
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
    messages.start();
    return new Outcome.Started(
        new Service(page, way.trouble(), engine, lines, ledger, sessions, messages, server));
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
