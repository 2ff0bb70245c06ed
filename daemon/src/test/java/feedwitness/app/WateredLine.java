package feedwitness.app;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import feedwitness.engine.AlarmWatch;
import feedwitness.engine.Engine;
import feedwitness.engine.FeedLineStatus;
import feedwitness.engine.FeedLineWatch;
import feedwitness.engine.Intake;
import feedwitness.engine.LineReplay;
import feedwitness.engine.ServiceState;
import feedwitness.host.DiskRoom;
import feedwitness.ledger.EvidenceDraft;
import feedwitness.ledger.EvidenceQuery;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.PointName;
import feedwitness.quantity.TemperatureUnit;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.Contact;
import feedwitness.sample.Indication;
import feedwitness.sample.Reading;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.ConfigReader;
import feedwitness.site.Site;
import feedwitness.store.H2Ledger;
import feedwitness.store.LedgerOpening;
import feedwitness.store.StoreSettings;
import feedwitness.watch.drift.LineChange;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;

/**
 * A glasshouse line in the real engine and store: five minutes of feed every half hour from 07:00
 * to 19:00, a reading every ten seconds (by night every minute) from source, line and a second
 * probe beside it.
 */
public final class WateredLine implements AutoCloseable, TimeSource {
  private static final long TEN = 10_000;
  private static final double WATER = 0.46;
  private static final String POINT =
      """
      [[point]]
      name = "%s"
      place = "%s"
      port = "/dev/serial/by-id/usb-bus"
      profile = "modbus-scaled"
      unit = %d
      compensation = "linear"
      """;

  private final Path folder;
  private final Random random = new Random(5);
  private Site site;
  private long millis = Instant.parse("2026-06-01T06:00:00Z").toEpochMilli();
  private long wallOffset;
  private double share = 1;
  private double event = 1;
  private double probe = 1;
  private double second = 1;
  private boolean sourceSpeaks = true;
  private boolean contact;
  private boolean warmth = true;
  private double rested = 1e6;
  private long step = TEN;
  private H2Ledger ledger;
  private Intake intake;
  private Engine engine;
  private AlarmWatch alarms;
  private FeedLineWatch lines;

  /** {@code feedLine}: the rest of its table. */
  public WateredLine(Path folder, String feedLine) throws IOException {
    this.folder = folder;
    site = read(feedLine);
    open();
  }

  private Site read(String feedLine) throws IOException {
    Files.writeString(
        folder.resolve("feedwitness.toml"),
        """
        [nursery]
        name = "Quarry End Nursery"
        zone = "UTC"
        """
            + tables(feedLine));
    ConfigOutcome outcome =
        ConfigReader.read(ConfigFiles.beside(folder.resolve("feedwitness.toml"), ZoneOffset.UTC));
    return assertInstanceOf(ConfigOutcome.Read.class, outcome, outcome::toString).config().site();
  }

  /** Points and feed line as they stand in the configuration. */
  public static String tables(String feedLine) {
    return POINT.formatted("source", "source", 11)
        + POINT.formatted("line", "line", 12)
        + POINT.formatted("line-2", "line", 13)
        + "[[feed-line]]\nname = \"glasshouse\"\nsource = \"source\"\nline = \"line\"\n"
        + feedLine;
  }

  private void open() {
    Path store = folder.resolve("feedwitness-data");
    LedgerOpening opening =
        H2Ledger.open(
            new StoreSettings(
                store,
                Duration.ofSeconds(1),
                StoreSettings.DEFAULT_QUEUE,
                1_000_000,
                Optional.empty()),
            this,
            new DiskRoom(store));
    ledger = assertInstanceOf(LedgerOpening.Opened.class, opening).ledger();
    intake = new Intake(ledger.boot(), this);
    engine = new Engine(ledger.boot(), "test", site, intake, ledger, ledger, this);
    alarms =
        new AlarmWatch(
            engine,
            engine::stampNow,
            ledger,
            ledger,
            new ServiceState(
                ledger::halted, new DiskRoom(store), 1_000_000, ServiceState.USUAL_SILENCE),
            () -> true);
    lines = new FeedLineWatch(site, engine::stampNow, ledger, ledger, ledger, alarms::report);
    engine.watch(alarms);
    engine.watch(lines);
  }

  /** What the mixer delivers, 1 is as set. */
  public WateredLine delivering(double ofNormal) {
    share = ofNormal;
    return this;
  }

  /** What the line's own probe shows of what is there; a fouled one shows less. */
  WateredLine probeShowing(double ofTruth) {
    probe = ofTruth;
    return this;
  }

  /** The same of the second probe. */
  WateredLine secondShowing(double ofTruth) {
    second = ofTruth;
    return this;
  }

  WateredLine source(boolean speaks) {
    sourceSpeaks = speaks;
    return this;
  }

  WateredLine jumpClock(Duration by) {
    wallOffset += by.toMillis();
    return this;
  }

  public WateredLine hours(double hours) {
    for (long end = millis + Math.round(hours * 3_600_000); millis < end; ) {
      int ofDay = (int) (millis / 1000 % 86_400);
      boolean night = ofDay < 6 * 3600 || ofDay >= 20 * 3600;
      step = night ? 6 * TEN : TEN;
      millis += step;
      read();
    }
    return this;
  }

  private void read() {
    int ofDay = (int) (millis / 1000 % 86_400);
    int since = ofDay % 1800;
    boolean flows = ofDay >= 7 * 3600 && ofDay < 19 * 3600 && since < 300;
    if (flows && since < 10) {
      event = 1 + 0.006 * random.nextGaussian();
    }
    rested = flows ? 0 : rested + step / 1000.0;
    double celsius =
        !warmth ? 12 : flows ? 12 + 8 * Math.exp(-since / 12.0) : 20 - 8 * Math.exp(-rested / 1500);
    double settling = !warmth ? 1 : flows ? 1 - 0.15 * Math.exp(-since / 10.0) : 1;
    double truth = WATER + 1.04 * share * event * settling;
    if (sourceSpeaks) {
      take("source", WATER, 12, Contact.NONE);
    }
    Contact said = flows ? Contact.CLOSED : Contact.OPEN;
    take("line", truth * probe, celsius, contact ? said : Contact.NONE);
    take("line-2", truth * second, celsius, Contact.NONE);
    engine.drain();
  }

  /** Whether the line's instrument has a flow contact. */
  WateredLine contact(boolean wired) {
    contact = wired;
    return this;
  }

  /** As warm as the source: nothing in the signal says that water begins to flow. */
  WateredLine sameWarmth() {
    warmth = false;
    return this;
  }

  private void take(String point, double value, double celsius, Contact said) {
    double shown = value * (1 + 0.0188 * (celsius - 25)) * (1 + 0.002 * random.nextGaussian());
    intake.accept(
        stamp ->
            new Indication(
                new PointName(point),
                stamp,
                new Reading(
                    shown,
                    ConductivityUnit.MILLISIEMENS_PER_CM,
                    celsius,
                    TemperatureUnit.CELSIUS,
                    said),
                Indication.Origin.PROBE));
  }

  /** Somebody puts something on record. */
  void record(EvidenceDraft draft) throws Exception {
    ledger.append(engine.stampNow(), draft).get();
  }

  void log(LineChange change) throws IOException {
    lines.change(new PointName("glasshouse"), change, "Kim", "");
  }

  FeedLineStatus status() {
    return lines.feedLines().get(0);
  }

  /** Alarms of the line that stand now. */
  List<String> alarms() {
    return alarms.alarms().stream()
        .filter(each -> each.key().subject().equals("glasshouse"))
        .filter(each -> each.state().active())
        .map(each -> each.key().kind())
        .toList();
  }

  /** What is on record of findings, in words, oldest first. */
  List<String> findings() {
    restart();
    return ledger.evidence(EvidenceQuery.after(0, 1000, "drift")).stream()
        .map(
            record ->
                record.field("stage") + " " + record.field("kind") + " " + record.field("words"))
        .toList();
  }

  /** The same as a replay of what is stored gives it. */
  List<String> replayed() {
    return new LineReplay(site.feedLines().get(0), site, ledger, ledger)
        .run(Optional.empty(), Optional.empty()).findings().stream()
            .map(
                each ->
                    "%s %s %s"
                        .formatted(
                            each.stage().name().toLowerCase(Locale.ROOT),
                            each.kind().code(),
                            each.words()))
            .toList();
  }

  /** What is kept of the watch. */
  String kept() {
    restart();
    return ledger.state("feed-line:glasshouse").orElseThrow();
  }

  void restart() {
    stop();
    open();
  }

  /** Starts on another configuration. */
  void restart(String feedLine) throws IOException {
    stop();
    site = read(feedLine);
    open();
  }

  /** Starts on a state that somebody tampered with. */
  void restartOnState(String text) {
    lines.keep();
    ledger.keepState("feed-line:glasshouse", text);
    ledger.close();
    open();
  }

  private void stop() {
    lines.keep();
    ledger.close();
  }

  @Override
  public void close() {
    stop();
  }

  @Override
  public long monotonicNanos() {
    return millis * 1_000_000;
  }

  @Override
  public Instant wall() {
    return Instant.ofEpochMilli(millis + wallOffset);
  }
}
