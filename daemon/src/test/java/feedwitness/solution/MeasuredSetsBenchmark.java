package feedwitness.solution;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Compares the model with whole tables of single-salt measurements, wherever they lie:
 *
 * <pre>
 * MeasuredSetsBenchmark salts.csv
 * </pre>
 *
 * Columns: {@code set,salt,T_C,molality_mol_kgw,molarity_mol_L,mass_percent,kappa_mS_cm,
 * Lambda_eq_S_cm2_eq,source,status,flag}; rows whose status is not "read", and flagged ones, are
 * left out. Without a file it prints the table of the committed excerpt.
 */
final class MeasuredSetsBenchmark {
  private MeasuredSetsBenchmark() {}

  public static void main(String[] arguments) throws IOException {
    ConductivityModel model = new ConductivityModel();
    PrintStream out = System.out;
    if (arguments.length == 0) {
      AccuracyTable.rows(AccuracyTable.of(MeasuredPoint.all(model))).forEach(out::println);
      return;
    }
    Map<String, List<MeasuredPoint>> groups = new TreeMap<>();
    for (Csv.Row row : Csv.file(Path.of(arguments[0]))) {
      if (row.text("status").equals("read") && row.text("flag").isEmpty()) {
        MeasuredPoint point = point(model, row);
        if (point.ionicStrength() <= ConductivityModel.MAX_IONIC_STRENGTH) {
          groups.computeIfAbsent(group(point), key -> new ArrayList<>()).add(point);
        }
      }
    }
    groups.forEach((name, points) -> out.println(Accuracy.of(points).row(name)));
  }

  private static MeasuredPoint point(ConductivityModel model, Csv.Row row) {
    String unit = "m";
    String amount = row.text("molality_mol_kgw");
    if (amount.isEmpty()) {
      unit = "c";
      amount = row.text("molarity_mol_L");
    }
    if (amount.isEmpty()) {
      unit = "w";
      amount = row.text("mass_percent");
    }
    String kappa = row.text("kappa_mS_cm");
    String value = kappa.isEmpty() ? row.text("Lambda_eq_S_cm2_eq") : kappa;
    return MeasuredPoint.of(
        model,
        row.text("set"),
        row.text("salt"),
        row.number("T_C"),
        Double.parseDouble(amount),
        unit,
        Double.parseDouble(value),
        kappa.isEmpty());
  }

  private static String group(MeasuredPoint point) {
    String range =
        point.ionicStrength() <= 0.1 ? "0–0.1" : point.ionicStrength() <= 1 ? "0.1–1" : "1–3";
    return "%s %s °C, I %s".formatted(point.salt(), Figures.plain(point.celsius()), range);
  }
}
