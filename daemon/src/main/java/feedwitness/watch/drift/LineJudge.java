package feedwitness.watch.drift;

import feedwitness.site.FeedLine;
import feedwitness.site.Mixer;
import feedwitness.watch.diagnosis.Diagnoses;
import feedwitness.watch.diagnosis.Diagnosis;
import feedwitness.watch.diagnosis.Evidence;
import feedwitness.watch.drift.DriftFinding.Confidence;
import feedwitness.watch.drift.DriftFinding.Kind;
import feedwitness.watch.drift.DriftFinding.Stage;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Makes findings of what events say, by what is known of source, strengths and changes. */
final class LineJudge {
  /** Above the source by less than this share, the line carries source water. */
  private static final double PLAIN = 1.12;

  private static final double SURE = 1.6;

  private final FeedLine line;
  private final DeliveredShare share;
  private final LineClock clock;
  private final List<DriftFinding> found;
  private final FindingWords words;
  private final Teller teller;
  private final SourceWater source;
  private final InjectorChart chart;
  private final Expected expected;
  private final Clues clues = new Clues();
  private final SecondProbe second = new SecondProbe();
  private int plainRun;
  private boolean off;
  private boolean toldSilent;
  private boolean toldUnknown;
  private boolean toldFeedWhileOff;
  private boolean named;
  private boolean plainAnnounced;
  private boolean plainTold;
  private boolean strange;
  private double measured = Double.NaN;
  private double openedAt;
  private double openBegun;
  private @Nullable DriftFinding open;

  LineJudge(FeedLine line, DeliveredShare share, LineClock clock, List<DriftFinding> found) {
    this.line = line;
    this.share = share;
    this.clock = clock;
    this.found = found;
    words = new FindingWords(line);
    teller = new Teller(line.name(), clock);
    source = new SourceWater(line.sourceStrength());
    chart = new InjectorChart(line.limits());
    expected = new Expected(line, share, chart);
  }

  void source(double now, double conductivity25, double uncertainty, double celsius) {
    boolean first = !source.everMeasured();
    source.take(now, conductivity25, uncertainty, celsius);
    toldSilent = false;
    if (first && toldUnknown) {
      note(Kind.EVIDENCE, words.sourceAppeared());
      anew();
      named = false;
    }
  }

  /** A reading of another probe in the same liquid. */
  void second(double now, double conductivity25) {
    second.take(now, conductivity25);
  }

  /** Whether somebody said, or a schedule says, that plain water runs. */
  void plainAnnounced(boolean announced) {
    plainAnnounced = announced;
  }

  /** A strength that people named, mS/cm at 25 °C, source water included. */
  void named(double strength) {
    double delivered = share.of(strength, source.now(clock.seconds()));
    if (delivered > 0) {
      chart.levels().expect(Math.log(delivered), chart.baseline());
    }
  }

  /** The line's probe was checked in a standard. */
  void checked(Evidence.Check made) {
    clues.checked(made, clock.seconds());
    note(Kind.EVIDENCE, words.checked(made, chart.shifted() || open != null));
    DriftFinding lasting = open;
    if (lasting != null && lasting.kind().isDrift() && !chart.shifted()) {
      Diagnosis why = Diagnoses.of(evidence(lasting.sizePercent(), false, false, openBegun));
      open =
          lasting.judgedAnew(
              why,
              words.shifted(
                  lasting.sizePercent(), lasting.plusMinusPercent(), lasting.stage(), false, why));
    }
  }

  /** An irrigation event is over. */
  void event(LineEvent event) {
    take(event, chart::add);
  }

  private void take(LineEvent event, Entry entry) {
    double water = source.now(event.seconds());
    tellAboutSource(event.seconds(), water);
    measured = event.conductivity25();
    expected.measured(event, water, source.uncertainty());
    double kelvin = event.celsius() - source.celsius(event.seconds());
    clues.air(event.airy() > 0 || (plainRun > 0 && clues.airSeen()));
    boolean plain = water > 0 && event.conductivity25() < water * PLAIN;
    if (off) {
      whileOff(event, water, plain);
      return;
    }
    clues.warmer(kelvin, !plain && !chart.shifted());
    if (!plain) {
      double ours = share.of(event.conductivity25(), water);
      double other = share.of(second.now(clock.seconds()), water);
      if (ours > 0 && other > 0) {
        clues.second(Math.log(other / ours), event.seconds(), !chart.shifted() && open == null);
      }
    }
    if (plain) {
      plain(event, water);
      return;
    }
    if (plainRun > 0) {
      plainRun = 0;
      plainTold = false;
      close(Kind.OVER, words.plainOver());
    }
    fed(event, water, entry);
  }

  /** How a value goes to the chart. */
  private interface Entry {
    InjectorChart.Said add(double value, double seconds);
  }

  private void whileOff(LineEvent event, double water, boolean plain) {
    if (!plain && water > 0 && !toldFeedWhileOff) {
      toldFeedWhileOff = true;
      note(Kind.EVIDENCE, words.feedWhileOff(event.conductivity25(), water));
    }
  }

  private void plain(LineEvent event, double water) {
    clues.plain(Math.log(event.conductivity25() / water), event.seconds(), !chart.shifted());
    chart.baseline().interrupt();
    boolean first = plainRun++ == 0;
    if (plainAnnounced) {
      if (first) {
        note(Kind.PLAIN_WATER, words.plainAsAnnounced(event.conductivity25()));
      }
      return;
    }
    if (!plainTold) {
      plainTold = true;
      Diagnosis why = Diagnoses.of(evidence(-100, false, true, event.seconds()));
      tell(
          Kind.PLAIN_WATER,
          Stage.NOTICE,
          event.seconds(),
          new Teller.Size(-100, Double.NaN),
          Confidence.SURE,
          why,
          words.plain(event.conductivity25(), water, why));
    }
  }

  private void fed(LineEvent event, double water, Entry entry) {
    double delivered = share.of(event.conductivity25(), water);
    if (!(delivered > 0)) {
      plain(event, water);
      return;
    }
    name(event.seconds(), water);
    if (waitsForRecipe(Math.log(delivered))) {
      return;
    }
    InjectorChart.Said said = entry.add(Math.log(delivered), event.seconds());
    switch (said) {
      case LEARNT -> learnt();
      case SHIFTED -> shifted();
      case OVER -> close(Kind.OVER, words.over());
      case STRANGE -> strange();
      case STRENGTH_LEARNT ->
          note(Kind.STRENGTH_LEARNT, words.strengthLearnt(event.conductivity25()));
      case NOTHING -> {
        if (strange && chart.levels().run() == 0) {
          close(Kind.OVER, words.over());
        }
      }
    }
  }

  /** The recipe says what is right before what is normal has been learnt. */
  private boolean waitsForRecipe(double value) {
    Expected.Said said = expected.judge(value);
    if (said == Expected.Said.RIGHT_AGAIN) {
      close(Kind.OVER, words.over());
      anew();
    } else if (said == Expected.Said.OFF) {
      double percent = expected.offPercent();
      double within = expected.offPlusMinus();
      tell(
          Kind.OFF_RECIPE,
          Stage.NOTICE,
          clock.seconds(),
          new Teller.Size(percent, within),
          Confidence.LIKELY,
          Diagnoses.of(evidence(percent, false, false, clock.seconds())),
          words.offStock(percent, within, expected.offStrength()));
    }
    return said == Expected.Said.WAIT;
  }

  /** An hour of water that never rests; told only if nothing sudden explains it. */
  void hour(LineEvent hour, boolean explained) {
    measured = hour.conductivity25();
    expected.measured(hour, source.now(hour.seconds()), source.uncertainty());
    if (explained || off) {
      chart.baseline().interrupt();
      return;
    }
    take(hour, chart::addHour);
  }

  /** Water that never rests changed suddenly. */
  void sudden(double begun, double size, double conductivity25) {
    if (off) {
      return;
    }
    double percent = 100 * Math.expm1(size);
    double water = source.now(begun);
    boolean plain = water > 0 && conductivity25 < water * PLAIN;
    Diagnosis why = Diagnoses.of(evidence(percent, false, plain, begun));
    boolean alarm = Math.abs(percent) >= line.limits().alarmPercent();
    Stage stage = alarm ? Stage.ALARM : Stage.NOTICE;
    tell(
        plain ? Kind.PLAIN_WATER : Kind.STEP,
        plain ? Stage.NOTICE : stage,
        begun,
        new Teller.Size(percent, Double.NaN),
        Confidence.SURE,
        why,
        plain
            ? words.plain(conductivity25, water, why)
            : words.shifted(percent, Double.NaN, stage, false, why));
  }

  void suddenOver() {
    close(Kind.OVER, words.over());
  }

  private void name(double seconds, double water) {
    if (named) {
      return;
    }
    named = true;
    double nominal = source.nominal(seconds);
    double[] logs = expected.logs(nominal);
    chart.levels().name(water > 0 || nominal == 0 ? logs : new double[0]);
  }

  private void learnt() {
    Baseline baseline = chart.baseline();
    note(Kind.LEARNT, words.learnt(baseline.count(), 200 * baseline.sigma()));
    Levels levels = chart.levels();
    for (int i = 0; i < levels.names(); i++) {
      double percent = 100 * Math.expm1(baseline.mean(i) - levels.named(i));
      if (baseline.count(i) > 0 && Math.abs(percent) >= line.limits().alarmPercent()) {
        tell(
            Kind.OFF_RECIPE,
            Stage.NOTICE,
            clock.seconds(),
            new Teller.Size(percent, 250 * baseline.standardError(baseline.count(i))),
            Confidence.LIKELY,
            Diagnoses.of(evidence(percent, false, false, clock.seconds())),
            words.offRecipe(
                percent, share.line(Math.exp(levels.named(i)), source.nominal(clock.seconds()))));
      }
    }
  }

  private void shifted() {
    openedAt = clock.seconds();
    tell(shift());
  }

  /** The change as it stands now. */
  private DriftFinding shift() {
    double percent = chart.sizePercent();
    double within = chart.plusMinusPercent();
    Diagnosis why = Diagnoses.of(evidence(percent, chart.gradual(), false, chart.begun()));
    return teller.finding(
        chart.gradual() ? Kind.RAMP : Kind.STEP,
        chart.stage(),
        chart.begun(),
        openedAt,
        new Teller.Size(percent, within),
        Math.abs(percent) > SURE * within ? Confidence.SURE : Confidence.LIKELY,
        why,
        words.shifted(percent, within, chart.stage(), chart.gradual(), why));
  }

  /** Events like no known strength: a new one, or a fault so large that it looks like one. */
  private void strange() {
    strange = true;
    Levels levels = chart.levels();
    double percent = levels.alike() ? strangePercent(levels) : Double.NaN;
    Diagnosis why =
        Diagnoses.of(
            evidence(Double.isNaN(percent) ? 0 : percent, false, false, levels.firstSeconds()));
    boolean steady = !Double.isNaN(percent);
    Stage stage =
        steady && Math.abs(percent) >= line.limits().alarmPercent() ? Stage.ALARM : Stage.NOTICE;
    tell(
        steady ? Kind.STEP : Kind.UNSTEADY,
        stage,
        levels.firstSeconds(),
        new Teller.Size(percent, Double.NaN),
        why.ambiguous() ? Confidence.CANNOT_TELL : Confidence.LIKELY,
        why,
        steady ? words.shifted(percent, Double.NaN, stage, false, why) : words.unsteady(why));
  }

  /** Against the strength before; at the very first against the only one that is expected. */
  private double strangePercent(Levels levels) {
    return chart.lastLevel() == Levels.UNKNOWN && levels.names() == 1
        ? 100 * Math.expm1(levels.stranger() - levels.named(0))
        : chart.strangePercent();
  }

  private void tellAboutSource(double seconds, double water) {
    if (source.everMeasured()) {
      if (!source.fresh(seconds) && !toldSilent) {
        toldSilent = true;
        note(Kind.EVIDENCE, words.sourceSilent(water));
      }
    } else if (!toldUnknown && !(line.mixer() instanceof Mixer.None)) {
      toldUnknown = true;
      note(Kind.EVIDENCE, words.sourceUnknown(water > 0));
    }
  }

  void clockJumped(double by) {
    note(Kind.EVIDENCE, words.clock(by));
  }

  void changed(LineChange change, boolean during) {
    note(Kind.EVIDENCE, words.changed(change, during));
    off = change == LineChange.TURNED_OFF;
    toldFeedWhileOff = false;
    if (change == LineChange.STOCK_FILLED) {
      clues.filled(clock.seconds());
    }
    if (change.rebaselines()) {
      if (strange || plainRun > 0 || chart.shifted() || open != null) {
        close(Kind.OVER, words.overByChange(change));
      }
      anew();
    }
  }

  /** What is normal is learnt anew. */
  void anew() {
    chart.rebaseline();
    expected.anew();
    plainRun = 0;
    plainTold = false;
    open = null;
    strange = false;
  }

  private Evidence evidence(double percent, boolean gradual, boolean plain, double begun) {
    double now = clock.seconds();
    return clues.about(
        percent,
        gradual,
        plain,
        begun,
        source.shiftPercent(now),
        source.now(now) > 0,
        chart.levels().names() == 0);
  }

  private void note(Kind kind, String said) {
    tell(
        kind,
        Stage.NOTE,
        clock.seconds(),
        new Teller.Size(Double.NaN, Double.NaN),
        Confidence.SURE,
        Diagnosis.NONE,
        said);
  }

  private void close(Kind kind, String said) {
    open = null;
    strange = false;
    note(kind, said);
  }

  private void tell(
      Kind kind,
      Stage stage,
      double begun,
      Teller.Size size,
      Confidence confidence,
      Diagnosis why,
      String said) {
    if (stage.compareTo(Stage.SEEN) >= 0) {
      openBegun = begun;
    }
    tell(teller.finding(kind, stage, begun, clock.seconds(), size, confidence, why, said));
  }

  private void tell(DriftFinding finding) {
    if (finding.stage().compareTo(Stage.SEEN) >= 0) {
      open = finding;
    }
    found.add(finding);
  }

  DriftStanding standing() {
    double water = source.now(clock.seconds());
    return new DriftStanding(
        phase(),
        expected.from(),
        chart.baseline().count(),
        expected.strength(water),
        expected.strengthPlusMinus(water),
        measured,
        expected.percent(),
        expected.plusMinusPercent(),
        expected.ratioExpected(),
        expected.ratio(),
        chart.shifted() ? Optional.of(shift()) : Optional.ofNullable(open),
        chart.strayed().recent(clock));
  }

  private DriftStanding.Phase phase() {
    if (off) {
      return DriftStanding.Phase.OFF;
    }
    if (plainRun > 0) {
      return DriftStanding.Phase.PLAIN_WATER;
    }
    if (chart.shifted() || strange || open != null) {
      return DriftStanding.Phase.SHIFTED;
    }
    return chart.baseline().count() < InjectorChart.LEARNT
        ? DriftStanding.Phase.LEARNING
        : DriftStanding.Phase.NORMAL;
  }

  void write(StateWriter out) {
    source.write(out);
    chart.write(out);
    clues.write(out);
    out.whole(plainRun).truth(off).truth(toldSilent).truth(toldUnknown).truth(toldFeedWhileOff);
    out.truth(named).truth(strange).number(measured).number(openedAt);
    expected.write(out);
    second.write(out);
    out.truth(plainAnnounced).truth(plainTold);
  }

  void read(StateReader in) {
    source.read(in);
    chart.read(in);
    clues.read(in);
    plainRun = in.count(Integer.MAX_VALUE);
    off = in.truth();
    toldSilent = in.truth();
    toldUnknown = in.truth();
    toldFeedWhileOff = in.truth();
    named = in.truth();
    strange = in.truth();
    measured = in.number();
    openedAt = in.number();
    expected.read(in);
    second.read(in);
    plainAnnounced = in.truth();
    plainTold = in.truth();
  }
}
