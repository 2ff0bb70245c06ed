package feedwitness.solution;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;

/**
 * The parameters of the model, from {@code parameters.properties}, where each has its source.
 *
 * @param species components first: H+ at index 0, then the {@link Ion}s in their order
 * @param bulk solutes of the volume and viscosity sums
 */
record Parameters(
    List<Species> species,
    List<BulkSolute> bulk,
    double activityCap,
    double stockDamping,
    double stockDampingFrom,
    double crowdingFrom,
    double walden) {

  Parameters {
    species = List.copyOf(species);
    bulk = List.copyOf(bulk);
  }

  /** Number of components: H+ and every ion. */
  static int components() {
    return 1 + Ion.values().length;
  }

  static Parameters load() {
    return new Reader(ResourceBundle.getBundle("feedwitness.solution.parameters", Locale.ROOT))
        .read();
  }

  private static final class Reader {
    private final ResourceBundle text;

    Reader(ResourceBundle text) {
      this.text = text;
    }

    Parameters read() {
      List<String> bulkNames = List.of(words("bulk"));
      List<BulkSolute> bulk = new ArrayList<>();
      for (String name : bulkNames) {
        double[] n = numbers("bulk." + name);
        bulk.add(new BulkSolute((int) n[0], n[1], n[2], n[3], n[4], n[5], n[6]));
      }
      Map<String, Integer> components = new HashMap<>();
      components.put("H+", 0);
      for (Ion ion : Ion.values()) {
        components.put(ion.species(), ion.component());
      }
      List<Species> species = new ArrayList<>();
      for (String name : words("species")) {
        species.add(species(name, components, bulkNames));
      }
      return new Parameters(
          species,
          bulk,
          number("model.activityCap"),
          number("model.stockDamping"),
          number("model.stockDampingFrom"),
          number("model.crowdingFrom"),
          number("model.walden"));
    }

    private Species species(String name, Map<String, Integer> components, List<String> bulkNames) {
      List<Species.Part> parts = new ArrayList<>();
      Integer itself = components.get(name);
      if (itself != null) {
        parts.add(new Species.Part(itself, 1));
      } else {
        String[] words = words(name + ".formedFrom");
        for (int i = 0; i < words.length; i += 2) {
          Integer component = components.get(words[i + 1]);
          if (component == null) {
            throw new IllegalStateException(name + " forms from unknown " + words[i + 1]);
          }
          parts.add(new Species.Part(component, Integer.parseInt(words[i])));
        }
      }
      List<Integer> bulk = new ArrayList<>();
      if (text.containsKey(name + ".bulk")) {
        for (String solute : words(name + ".bulk")) {
          bulk.add(bulkNames.indexOf(solute));
        }
      }
      return new Species(
          name,
          (int) number(name + ".charge"),
          parts,
          itself != null ? Equilibrium.NONE : equilibrium(name + ".logK"),
          optional(name + ".fade", 0),
          mobility(name),
          bulk);
    }

    private Equilibrium equilibrium(String key) {
      String[] words = words(key);
      double[] n = new double[words.length - 1];
      for (int i = 0; i < n.length; i++) {
        n[i] = Double.parseDouble(words[i + 1]);
      }
      return words[0].equals("vantHoff")
          ? Equilibrium.vantHoff(n[0], n[1])
          : new Equilibrium(n[0], n[1], n[2], n[3], n[4], n[5]);
    }

    private Mobility mobility(String name) {
      if (!text.containsKey(name + ".lambda25")) {
        return Mobility.NONE;
      }
      double[] course =
          text.containsKey(name + ".lambdaT") ? numbers(name + ".lambdaT") : new double[3];
      return new Mobility(
          number(name + ".lambda25"),
          course[0],
          course[1],
          course[2],
          optional(name + ".size", number("model.sizeDefault")),
          optional(name + ".viscosityPower", number("model.viscosityPowerDefault")),
          optional(name + ".acidLoss", 0),
          optional(name + ".crowding", 0));
    }

    private String[] words(String key) {
      return text.getString(key).trim().split("\\s+", -1);
    }

    private double[] numbers(String key) {
      String[] words = words(key);
      double[] numbers = new double[words.length];
      for (int i = 0; i < words.length; i++) {
        numbers[i] = Double.parseDouble(words[i]);
      }
      return numbers;
    }

    private double number(String key) {
      return numbers(key)[0];
    }

    private double optional(String key, double otherwise) {
      return text.containsKey(key) ? number(key) : otherwise;
    }
  }
}
