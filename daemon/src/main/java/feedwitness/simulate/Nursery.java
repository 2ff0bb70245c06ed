package feedwitness.simulate;

import feedwitness.quantity.Octets;
import feedwitness.simulate.Deed.Target;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

/**
 * Quarry End Nursery, second by simulated second: plant, probes, faults, and what the instruments
 * say on their wires. The same seed, start and calls give the same truth and the same octets on any
 * machine; how often it is advanced or asked for its truth makes no difference. One thread at a
 * time.
 */
public final class Nursery {
  /** Unit of the tank's probe on the bus. */
  public static final int TANK_UNIT = 11;

  /** Unit of the line's probe on the bus. */
  public static final int LINE_UNIT = 12;

  private final ZoneId zone;
  private final ConductivityFormula formula = new IonicFormula();
  private final Plant plant;
  private final Probe source;
  private final Probe tank;
  private final Probe line;
  private final Agenda agenda;
  private final Happenings happenings = new Happenings();
  private final Noise noise;
  private Moment now;

  /** A nursery that has stood there for a while, at {@code start} cut to the second. */
  public Nursery(NurseryOptions options, Instant start) {
    zone = options.zone();
    Chance chance = new Chance(options.seed());
    Parameters parameters = options.schedule().parameters();
    now = Moment.at(start.getEpochSecond(), zone);
    plant = new Plant(parameters, formula, chance, now);
    source = probe(ProbeSpec.source(parameters), chance, Target.SOURCE, plant.climate().source());
    tank = probe(ProbeSpec.tank(parameters), chance, Target.TANK, plant.tank().atProbe());
    line = probe(ProbeSpec.line(parameters), chance, Target.LINE, plant.line().atProbe());
    agenda = new Agenda(options.schedule(), zone, Instant.ofEpochSecond(now.second()));
    noise = new Noise(chance.stream("wire noise"));
  }

  private Probe probe(ProbeSpec spec, Chance chance, Target target, Liquid start) {
    return new Probe(spec, formula, chance.stream("probe " + target.text()), start);
  }

  /** The nursery's present, a whole second. */
  public Instant now() {
    return Instant.ofEpochSecond(now.second());
  }

  /** Lets time pass up to the last whole second not after this; a time in the past does nothing. */
  public void advanceTo(Instant time) {
    while (now.second() < time.getEpochSecond()) {
      step();
    }
  }

  /** Lets one second pass. */
  public void step() {
    now = Moment.at(now.second() + 1, zone);
    happenings.over(now.second()).forEach(plant::end);
    agenda.due(now.second()).forEach(this::begin);
    if (happenings.is(DeedKind.INJECTOR_SAG, Target.NURSERY)) {
      sagInjector();
    }
    plant.step(now, happenings.is(DeedKind.BYPASS, Target.NURSERY));
    double shed = plant.climate().shedCelsius();
    source.step(plant.climate().source(), shed, happenings.faultOf(Target.SOURCE));
    tank.step(plant.tank().atProbe(), shed, happenings.faultOf(Target.TANK));
    line.step(plant.line().atProbe(), plant.climate().airCelsius(), lineFault());
  }

  /**
   * Makes something happen now, written as in a schedule without its time: {@code line in-air +2m}.
   *
   * @throws IllegalArgumentException saying what is wrong with it
   */
  public void begin(String deed) {
    begin(DeedReader.read(new ArrayDeque<>(Arrays.asList(deed.strip().split("\\s+")))));
  }

  private void begin(Deed deed) {
    if (!deed.duration().isZero()) {
      happenings.begin(deed, now.second());
    }
    switch (deed.kind()) {
      case CLEAN -> probe(deed.target()).clean();
      case ADJUST -> probe(deed.target()).adjust(deed.amount() / 100);
      default -> plant.perform(deed);
    }
  }

  private Probe probe(Target target) {
    return switch (target) {
      case SOURCE -> source;
      case TANK -> tank;
      case LINE -> line;
      default -> throw new IllegalArgumentException(target.text() + " is no probe");
    };
  }

  private void sagInjector() {
    double amount =
        happenings.now(DeedKind.INJECTOR_SAG, Target.NURSERY).map(Deed::amount).orElse(0.0) / 100;
    double progress = happenings.progress(DeedKind.INJECTOR_SAG, Target.NURSERY, now.second());
    plant.line().injector().sag(amount * progress);
  }

  private ProbeFault lineFault() {
    ProbeFault fault = happenings.faultOf(Target.LINE);
    return plant.line().air() && fault.standard() == 0
        ? new ProbeFault(true, fault.stuck(), fault.temperature(), 0, fault.fouling())
        : fault;
  }

  /** Whether the schedule has this cable pulled. */
  public boolean isUnplugged(Wire wire) {
    return happenings.is(DeedKind.UNPLUG, wire.target());
  }

  /** What the source probe pushes at this moment; nothing while it is silent. */
  public Octets sourceLine() {
    if (happenings.is(DeedKind.SILENCE, Target.SOURCE)) {
      return Octets.NONE;
    }
    return happenings.is(DeedKind.GARBAGE, Target.SOURCE)
        ? noise.burst()
        : PushedLine.of(source.indicated(), source.indicatedCelsius());
  }

  /** What the bus answers to a whole request; nothing if nobody feels asked. */
  public Octets answer(Octets request) {
    if (happenings.is(DeedKind.SILENCE, Target.BUS)) {
      return Octets.NONE;
    }
    Octets answer = ModbusSlave.answer(request, units());
    return happenings.is(DeedKind.GARBAGE, Target.BUS) && answer.length() > 0
        ? noise.damage(answer)
        : answer;
  }

  private Map<Integer, ModbusSlave.Unit> units() {
    Map<Integer, ModbusSlave.Unit> units = new TreeMap<>();
    if (!happenings.is(DeedKind.SILENCE, Target.TANK)) {
      units.put(TANK_UNIT, ModbusSlave.Unit.floats(3, tank.indicated(), tank.indicatedCelsius()));
    }
    if (!happenings.is(DeedKind.SILENCE, Target.LINE)) {
      units.put(
          LINE_UNIT,
          ModbusSlave.Unit.integers(
                  4, Math.round(line.indicated() * 1000), Math.round(line.indicatedCelsius() * 10))
              .withContact(plant.line().flow() > 0));
    }
    return units;
  }

  /** Damage and bursts for a wire that is garbled by hand. */
  Octets burst() {
    return noise.burst();
  }

  /** What must add up. */
  public Balance balance() {
    return plant.balance();
  }

  /** What is really so. */
  public Truth truth() {
    boolean bubbles = plant.line().air();
    return new Truth(
        now(),
        point(source, plant.climate().source(), happenings.is(DeedKind.IN_AIR, Target.SOURCE)),
        point(tank, plant.tank().atProbe(), happenings.is(DeedKind.IN_AIR, Target.TANK)),
        point(line, plant.line().atProbe(), bubbles || happenings.is(DeedKind.IN_AIR, Target.LINE)),
        drain(),
        feed(),
        happenings.texts());
  }

  private Truth.Point point(Probe probe, Liquid liquid, boolean inAir) {
    return new Truth.Point(
        formula.at25(liquid),
        formula.raw(liquid),
        liquid.celsius(),
        probe.indicated(),
        probe.indicatedCelsius(),
        probe.sensitivity(),
        inAir);
  }

  private Truth.Drain drain() {
    Liquid drain = plant.bench().drain();
    return new Truth.Drain(formula.at25(drain), drain.celsius(), plant.bench().runOff());
  }

  private Truth.Feed feed() {
    FeedLine feed = plant.line();
    return new Truth.Feed(
        feed.flow(),
        plant.recipe().target(feed.setting()),
        plant.recipe().ratio(feed.setting()),
        feed.injectedShare(),
        feed.injector().strokes(),
        feed.barrel().gramsPerLitre(),
        feed.barrel().litres(),
        plant.tank().litres(),
        formula.at25(plant.tank().mean()));
  }
}
