package feedwitness.app;

import feedwitness.app.CompositionColumns.Faulty;
import feedwitness.app.CompositionColumns.Given;
import feedwitness.solution.ConductivityModel;
import feedwitness.solution.ConductivityOutcome;
import feedwitness.solution.ConductivityOutcome.Predicted;
import feedwitness.solution.ConductivityOutcome.Refused;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A row of the output.
 *
 * @param cells those of the input, then what the model says, or as many empty ones
 * @param answered whether the model said anything
 * @param remark why not, or what deserves a second look
 */
record ConductivityRow(List<String> cells, boolean answered, Optional<String> remark) {
  private static final List<String> ADDED =
      List.of("conductivity_mS_cm", "uncertainty_mS_cm", "ionic_strength_mol_kg");

  /** Beyond these a solution feeds no plant. */
  private static final double LEAST_USUAL_PH = 3;

  private static final double MOST_USUAL_PH = 11.5;

  ConductivityRow {
    cells = List.copyOf(cells);
  }

  /** Columns added to those of the input. A pH column of the input is filled instead. */
  static List<String> added(CompositionColumns columns) {
    List<String> added = new ArrayList<>(ADDED);
    if (!columns.hasPh()) {
      added.add(CompositionColumns.PH);
    }
    return List.copyOf(added);
  }

  static ConductivityRow of(
      List<String> input, CompositionColumns columns, ConductivityModel model) {
    CompositionColumns.Row row = columns.row(input);
    if (row instanceof Faulty faulty) {
      return unanswered(input, columns, faulty.problem());
    }
    Given given = (Given) row;
    ConductivityOutcome outcome = given.predict(model);
    if (outcome instanceof Refused refused) {
      return unanswered(input, columns, refused.message());
    }
    Predicted value = (Predicted) outcome;
    List<String> cells = new ArrayList<>(input);
    cells.add(figures(value.conductivity(), 7));
    cells.add(figures(value.standardUncertainty(), 3));
    cells.add(figures(value.ionicStrength(), 7));
    String pH = BigDecimal.valueOf(value.pH()).setScale(4, RoundingMode.HALF_EVEN).toPlainString();
    if (!columns.hasPh()) {
      cells.add(pH);
    } else if (given.pH().isEmpty()) {
      cells.set(columns.phPlace(), pH);
    }
    return new ConductivityRow(cells, true, given.pH().isEmpty() ? doubt(value) : Optional.empty());
  }

  /** As many cells as the header has, so that the table stays one. */
  private static ConductivityRow unanswered(
      List<String> input, CompositionColumns columns, String why) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < columns.count(); i++) {
      cells.add(i < input.size() ? input.get(i) : "");
    }
    for (int i = 0; i < added(columns).size(); i++) {
      cells.add("");
    }
    return new ConductivityRow(cells, false, Optional.of(why));
  }

  private static Optional<String> doubt(Predicted value) {
    if (value.pH() >= LEAST_USUAL_PH && value.pH() <= MOST_USUAL_PH) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            "note: the charges balance only at pH %.1f; if it is not meant so, an ion is missing",
            value.pH()));
  }

  private static String figures(double value, int digits) {
    return BigDecimal.valueOf(value).round(new MathContext(digits)).toPlainString();
  }
}
