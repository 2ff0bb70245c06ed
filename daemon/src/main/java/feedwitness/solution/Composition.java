package feedwitness.solution;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is dissolved in a kilogram of water, in mol. What is not named is absent. Amounts are taken
 * as given; the model refuses those it cannot use and says which.
 *
 * @param ions totals, mol/kg of water
 * @param traces trace elements, mol/kg of water
 * @param neutrals neutral solutes, mol/kg of water
 */
public record Composition(
    Map<Ion, Double> ions, Map<Trace, Double> traces, Map<NeutralSolute, Double> neutrals) {

  /** Nothing dissolved. */
  public static final Composition WATER = new Composition(Map.of(), Map.of(), Map.of());

  public Composition {
    ions = sorted(Ion.class, ions);
    traces = sorted(Trace.class, traces);
    neutrals = Collections.unmodifiableMap(new LinkedHashMap<>(neutrals));
  }

  private static <E extends Enum<E>> Map<E, Double> sorted(Class<E> type, Map<E, Double> map) {
    EnumMap<E, Double> copy = new EnumMap<>(type);
    copy.putAll(map);
    return Collections.unmodifiableMap(copy);
  }

  /** Of ions alone, mol/kg of water. */
  public static Composition of(Map<Ion, Double> ions) {
    return new Composition(ions, Map.of(), Map.of());
  }

  /** Total of one ion, mol/kg of water; 0 where absent. */
  public double of(Ion ion) {
    return ions.getOrDefault(ion, 0.0);
  }

  /** This with another amount of one ion, mol/kg of water. */
  public Composition with(Ion ion, double amount) {
    Map<Ion, Double> changed = new EnumMap<>(Ion.class);
    changed.putAll(ions);
    changed.put(ion, amount);
    return new Composition(changed, traces, neutrals);
  }

  /** This with another amount of one trace element, mol/kg of water. */
  public Composition with(Trace trace, double amount) {
    Map<Trace, Double> changed = new EnumMap<>(Trace.class);
    changed.putAll(traces);
    changed.put(trace, amount);
    return new Composition(ions, changed, neutrals);
  }

  /** This with another amount of one neutral solute, mol/kg of water. */
  public Composition with(NeutralSolute solute, double amount) {
    Map<NeutralSolute, Double> changed = new LinkedHashMap<>(neutrals);
    changed.put(solute, amount);
    return new Composition(ions, traces, changed);
  }

  /** Every amount times a factor: concentrated or diluted with pure water. */
  public Composition times(double factor) {
    return WATER.plus(factor, this);
  }

  /**
   * This water with {@code factor} kilograms' worth of solutes of another composition dissolved in
   * each kilogram of it.
   */
  public Composition plus(double factor, Composition other) {
    Map<Ion, Double> sum = new EnumMap<>(Ion.class);
    sum.putAll(ions);
    other.ions.forEach((ion, amount) -> sum.merge(ion, factor * amount, Double::sum));
    Map<Trace, Double> traceSum = new EnumMap<>(Trace.class);
    traceSum.putAll(traces);
    other.traces.forEach((trace, amount) -> traceSum.merge(trace, factor * amount, Double::sum));
    Map<NeutralSolute, Double> neutralSum = new LinkedHashMap<>(neutrals);
    other.neutrals.forEach((solute, a) -> neutralSum.merge(solute, factor * a, Double::sum));
    return new Composition(sum, traceSum, neutralSum);
  }
}
