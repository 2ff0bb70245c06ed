package feedwitness.feed;

import feedwitness.solution.Composition;
import feedwitness.solution.Ion;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The {@code water} form: a report, a measurement, both, or rain. */
final class WaterReader {
  private static final Map<String, Ion> IONS =
      Map.of(
          "calcium", Ion.CA,
          "magnesium", Ion.MG,
          "sodium", Ion.NA,
          "potassium", Ion.K,
          "ammonium", Ion.NH4,
          "chloride", Ion.CL,
          "sulfate", Ion.SO4,
          "nitrate", Ion.NO3,
          "phosphate", Ion.PO4);

  private static final double MOST_MILLIMOL = 60;
  private static final double USUAL_PH = 7.5;

  /** First dissociation of carbonic acid near 15 °C. */
  private static final double PK1 = 6.42;

  private static final double CALCIUM_OF_HARDNESS = 0.8;

  /** Percent of the sum; laboratories aim below 5. */
  private static final double GOOD_BALANCE = 5;

  private static final double WORST_BALANCE = 15;

  /** Share of the side that an ion the report does not name may make up. */
  private static final double MOST_UNNAMED = 0.4;

  private static final double APART = 0.1;

  private final Form form;
  private final Foresight foresight;
  private final Map<Ion, Double> millimol = new EnumMap<>(Ion.class);
  private final List<String> notes = new ArrayList<>();

  private WaterReader(Form form, Foresight foresight) {
    this.form = form;
    this.foresight = foresight;
  }

  /** Reads the form; empty with faults noted if it cannot be used. */
  static Optional<SourceWater> read(Form form, Foresight foresight) {
    return new WaterReader(form, foresight).read();
  }

  private Optional<SourceWater> read() {
    int before = form.faults().size();
    Optional<Boolean> rain = form.choice("kind", Map.of("rain", true, "report", false));
    for (Map.Entry<String, Ion> each : IONS.entrySet()) {
      form.read(
              each.getKey(),
              text -> WaterText.ion(text, each.getValue()),
              0,
              MOST_MILLIMOL,
              "mmol/L")
          .ifPresent(amount -> millimol.put(each.getValue(), amount));
    }
    Optional<Double> hardness =
        form.read("hardness", WaterText::hardness, 0, MOST_MILLIMOL, "mmol/L");
    Optional<Double> alkalinity =
        form.read("alkalinity", WaterText::alkalinity, 0, MOST_MILLIMOL, "mmol/L");
    double pH = form.read("ph", Amounts::number, 4, 10.5, "").orElse(USUAL_PH);
    Optional<Double> measured = form.read("measured", Amounts::strength);
    form.finish();
    if (form.faults().size() > before) {
      return Optional.empty();
    }
    hardness.ifPresent(this::harden);
    boolean report = !millimol.isEmpty() || alkalinity.isPresent();
    if (!report || rain.orElse(false)) {
      return Optional.of(withoutReport(rain.orElse(false), measured));
    }
    return reported(alkalinity, pH, measured);
  }

  private SourceWater withoutReport(boolean rain, Optional<Double> measured) {
    if (rain || measured.isEmpty() || measured.get() < 0.03) {
      return SourceWater.RAIN;
    }
    return SourceWater.ofStrength(measured.get(), foresight);
  }

  private void harden(double hardness) {
    boolean calcium = millimol.containsKey(Ion.CA);
    boolean magnesium = millimol.containsKey(Ion.MG);
    if (calcium && magnesium) {
      double sum = amount(Ion.CA) + amount(Ion.MG);
      if (Math.abs(sum - hardness) > APART * hardness) {
        notes.add(
            "hardness of %s mmol/L does not fit calcium and magnesium of %s mmol/L; check the units"
                .formatted(Text.figures(hardness, 3), Text.figures(sum, 3)));
      }
    } else if (calcium) {
      millimol.put(Ion.MG, Math.max(0, hardness - amount(Ion.CA)));
    } else if (magnesium) {
      millimol.put(Ion.CA, Math.max(0, hardness - amount(Ion.MG)));
    } else {
      millimol.put(Ion.CA, CALCIUM_OF_HARDNESS * hardness);
      millimol.put(Ion.MG, (1 - CALCIUM_OF_HARDNESS) * hardness);
      notes.add(
          "hardness taken as four parts calcium, one part magnesium: the report has no split");
    }
  }

  private Optional<SourceWater> reported(
      Optional<Double> alkalinity, double pH, Optional<Double> measured) {
    double ofCarbonate = alkalinity.orElse(0.0);
    boolean whole = fillUnnamed(Ion.NA, "sodium", -net(ofCarbonate), ofCarbonate);
    if (alkalinity.isEmpty() && net(0) > 0) {
      // hydrogen carbonate is what hard water balances its calcium with
      ofCarbonate = net(0);
      notes.add("alkalinity is not in the report: taken as what balances the charges");
    } else {
      whole &= fillUnnamed(Ion.CL, "chloride", net(ofCarbonate), ofCarbonate);
    }
    double off = net(ofCarbonate);
    double percent = 100 * off / Math.max(1e-9, cations() + anions(ofCarbonate));
    if (!whole || Math.abs(percent) > WORST_BALANCE) {
      unbalanced(ofCarbonate);
      return Optional.empty();
    }
    if (Math.abs(percent) > GOOD_BALANCE) {
      notes.add(
          "charges of the report are %s %% apart (good: 5); one figure may be off"
              .formatted(Text.fixed(Math.abs(percent), 1)));
    }
    millimol.merge(off > 0 ? Ion.CL : Ion.NA, Math.abs(off), Double::sum);
    return Optional.of(water(ofCarbonate, pH, measured, percent));
  }

  private SourceWater water(
      double alkalinity, double pH, Optional<Double> measured, double percent) {
    Composition perLitre =
        Composition.of(millimol)
            .with(Ion.CO3, alkalinity * (1 + Math.pow(10, PK1 - pH)))
            .times(1e-3);
    double predicted = foresight.at25(perLitre);
    measured.ifPresent(value -> compare(value, predicted));
    return new SourceWater(
        perLitre,
        Atoms.of(perLitre).times(1000),
        alkalinity,
        measured.orElse(Double.NaN),
        predicted,
        percent,
        notes);
  }

  private void compare(double measured, double predicted) {
    if (Math.abs(measured - predicted) > APART * Math.max(measured, predicted)) {
      notes.add(
          ("the water was measured at %s mS/cm, its report makes %s mS/cm; check the meter in a"
                  + " standard, or ask for a new report: water changes over the year")
              .formatted(Text.fixed(measured, 2), Text.fixed(predicted, 2)));
    }
  }

  /** An ion the report does not name makes up what is missing, within reason. */
  private boolean fillUnnamed(Ion ion, String name, double amount, double alkalinity) {
    if (amount <= 0 || millimol.containsKey(ion)) {
      return true;
    }
    if (amount > MOST_UNNAMED * Math.max(cations(), anions(alkalinity))) {
      return false;
    }
    millimol.put(ion, amount);
    notes.add(
        "%s is not in the report: taken as %s mmol/L, which balances the charges"
            .formatted(name, Text.figures(amount, 3)));
    return true;
  }

  private void unbalanced(double alkalinity) {
    double cations = cations();
    double anions = anions(alkalinity);
    form.fault(
        cations > anions ? "alkalinity" : "calcium",
        "the charges do not balance: cations %s meq/L, anions %s meq/L"
            .formatted(Text.fixed(cations, 2), Text.fixed(anions, 2)),
        cations > anions
            ? "an anion is missing or in another unit (alkalinity as CaCO3 or HCO3, NO3 or NO3-N)"
            : "a cation is missing or in another unit (hardness in °dH or mg/L)");
  }

  private double amount(Ion ion) {
    return millimol.getOrDefault(ion, 0.0);
  }

  private double net(double alkalinity) {
    return cations() - anions(alkalinity);
  }

  private double cations() {
    return side(1);
  }

  private double anions(double alkalinity) {
    return side(-1) + alkalinity;
  }

  private double side(int sign) {
    return millimol.entrySet().stream()
        .filter(each -> Atoms.charge(each.getKey()) * sign > 0)
        .mapToDouble(each -> Math.abs(Atoms.charge(each.getKey())) * each.getValue())
        .sum();
  }
}
