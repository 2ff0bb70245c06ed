package feedwitness.solution;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** The accuracy table of the documentation, recomputed from published measurements. */
final class AccuracyTable {
  private AccuracyTable() {}

  static Map<String, Accuracy> of(List<MeasuredPoint> all) {
    Map<String, Accuracy> table = new LinkedHashMap<>();
    Predicate<MeasuredPoint> at25 = p -> p.set().equals("A") || p.set().equals("C");
    range(table, all, "Salts at 25 °C", at25, 0, 0.01);
    range(table, all, "Salts at 25 °C", at25, 0.01, 0.1);
    range(table, all, "Salts at 25 °C", at25, 0.1, 0.5);
    range(table, all, "Salts at 25 °C", at25, 0.5, 1);
    range(table, all, "Salts at 25 °C", at25, 0, 0.1);
    range(table, all, "Salts at 25 °C", at25, 0.1, 1);
    range(table, all, "Salts at 25 °C", at25, 1, 3);
    Predicate<MeasuredPoint> at20 = p -> p.set().equals("B");
    range(table, all, "Salts at 20 °C (themselves ±2–5 %)", at20, 0, 1);
    range(table, all, "Salts at 20 °C (themselves ±2–5 %)", at20, 1, 3);
    for (double molality : new double[] {0.01, 0.1, 1}) {
      put(
          table,
          "NIST KCl %s mol/kg, 0–45 °C".formatted(Figures.plain(molality)),
          all,
          p -> p.set().equals("N") && Math.abs(p.ionicStrength() / molality - 1) < 0.01);
    }
    Predicate<MeasuredPoint> mixtures = p -> p.set().equals("M");
    range(table, all, "NaCl + KCl at 25 °C, not in the fit", mixtures, 0, 1.01);
    range(table, all, "NaCl + KCl at 25 °C, not in the fit", mixtures, 1.01, 3);
    return table;
  }

  private static void range(
      Map<String, Accuracy> table,
      List<MeasuredPoint> all,
      String label,
      Predicate<MeasuredPoint> which,
      double above,
      double to) {
    put(
        table,
        "%s, I %s–%s".formatted(label, Figures.plain(above), Figures.plain(to)),
        all,
        p -> which.test(p) && p.ionicStrength() > above && p.ionicStrength() <= to);
  }

  private static void put(
      Map<String, Accuracy> table,
      String label,
      List<MeasuredPoint> all,
      Predicate<MeasuredPoint> which) {
    table.put(label, Accuracy.of(all.stream().filter(which).toList()));
  }

  static List<String> rows(Map<String, Accuracy> table) {
    List<String> rows = new ArrayList<>();
    table.forEach((label, accuracy) -> rows.add(accuracy.row(label)));
    return rows;
  }
}
