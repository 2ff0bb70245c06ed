package feedwitness.simulate;

import java.util.Map;

/** The plant's numbers: what the file sets, else the defaults. */
record Parameters(Map<Parameter, Double> set) {
  static final Parameters DEFAULTS = new Parameters(Map.of());

  Parameters {
    set = Map.copyOf(set);
  }

  /** In the parameter's own unit. */
  double get(Parameter parameter) {
    Double chosen = set.get(parameter);
    return chosen == null ? parameter.initial() : chosen;
  }

  /** A percentage as a share. */
  double share(Parameter parameter) {
    return get(parameter) / 100;
  }
}
