package feedwitness.simulate;

/** Water, feed and air of the whole place; everything but probes and wires. */
final class Plant {
  private final Recipe recipe;
  private final Climate climate;
  private final MixingTank tank;
  private final FeedLine line;
  private final ReferenceBench bench;
  private final Totals totals = new Totals();

  Plant(Parameters parameters, ConductivityFormula formula, Chance chance, Moment start) {
    recipe = new Recipe(parameters, formula);
    climate = new Climate(parameters, chance, start);
    tank = new MixingTank(parameters, recipe, chance, climate);
    line = new FeedLine(parameters, recipe, chance, climate, start);
    bench = new ReferenceBench(parameters, chance, line.atProbe());
    totals.in(held());
  }

  /** One simulated second. */
  void step(Moment now, boolean bypass) {
    climate.step(now);
    tank.step(now, climate, totals);
    Parcel delivered = line.step(now, climate, bypass, totals);
    bench.step(now, climate, line, delivered, totals);
  }

  /** What is done at once. Deeds that do not concern the plant are left alone. */
  void perform(Deed deed) {
    switch (deed.kind()) {
      case INJECTOR_SERVICE -> line.injector().service();
      case TOP_UP -> tank.topUp(deed.amount());
      case BATCH -> tank.batch(deed.amount());
      case EMPTY_BARREL -> line.barrel().runOut(totals);
      case REFILL_BARREL -> line.barrel().refill(deed.amount() / 100, climate, totals);
      default -> {}
    }
  }

  /** What ends of itself. */
  void end(Deed deed) {
    if (deed.kind() == DeedKind.EMPTY_BARREL) {
      line.barrel().refill(1, climate, totals);
    }
  }

  Recipe recipe() {
    return recipe;
  }

  Climate climate() {
    return climate;
  }

  MixingTank tank() {
    return tank;
  }

  FeedLine line() {
    return line;
  }

  ReferenceBench bench() {
    return bench;
  }

  Balance balance() {
    Parcel in = totals.in();
    Parcel out = totals.out();
    Parcel held = held();
    return new Balance(
        in.litres(),
        out.litres(),
        held.litres(),
        in.salt(),
        out.salt(),
        held.salt(),
        in.mineral(),
        out.mineral(),
        held.mineral());
  }

  private Parcel held() {
    return tank.held().plus(line.held()).plus(bench.held());
  }
}
