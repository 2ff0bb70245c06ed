package feedwitness.calibration;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The standard solutions a nursery owns, weakest first. */
public record StandardShelf(List<StandardSolution> standards) {
  /** Nothing on it. */
  public static final StandardShelf EMPTY = new StandardShelf(List.of());

  /** A reading this far from the chosen standard may have been taken in another one. */
  private static final double STRANGE = 0.2;

  private static final double NEAR = 0.15;

  /**
   * Sorts by strength.
   *
   * @throws IllegalArgumentException if two share a name
   */
  public StandardShelf {
    standards =
        standards.stream().sorted(Comparator.comparingDouble(StandardSolution::nominal)).toList();
    Set<String> names = new HashSet<>();
    for (StandardSolution standard : standards) {
      if (!names.add(standard.name())) {
        throw new IllegalArgumentException(
            "two standards are called '%s'; give each bottle a name of its own"
                .formatted(standard.name()));
      }
    }
  }

  /** By name. */
  public Optional<StandardSolution> find(String name) {
    return standards.stream().filter(standard -> standard.name().equals(name)).findFirst();
  }

  /**
   * Another standard that a reading would suit, if it does not suit the chosen one: "did you mean
   * …?".
   *
   * @param milliSiemensPerCm reading at {@code celsius}, as an instrument that does not compensate
   *     shows it
   */
  public Optional<StandardSolution> likelier(
      StandardSolution chosen, double milliSiemensPerCm, double celsius) {
    if (!(apart(chosen, milliSiemensPerCm, celsius) > STRANGE)) {
      return Optional.empty();
    }
    return standards.stream()
        .filter(other -> !other.name().equals(chosen.name()))
        .filter(other -> apart(other, milliSiemensPerCm, celsius) < NEAR)
        .min(Comparator.comparingDouble(other -> apart(other, milliSiemensPerCm, celsius)));
  }

  /** Relative distance, unitless; NaN where the standard has no data at that temperature. */
  private static double apart(StandardSolution standard, double milliSiemensPerCm, double celsius) {
    return standard.course().at(celsius) instanceof StandardCourse.Conducts at
        ? Math.abs(milliSiemensPerCm / at.milliSiemensPerCm() - 1)
        : Double.NaN;
  }

  /**
   * The two that most narrowly enclose what is fed: the strongest at or below {@code low}, the
   * weakest at or above {@code high}, both mS/cm at 25 °C. Empty if the shelf has no such two.
   */
  public Optional<Pair> around(double low, double high) {
    Optional<StandardSolution> below =
        standards.stream()
            .filter(standard -> standard.nominal() <= low)
            .max(Comparator.comparingDouble(StandardSolution::nominal));
    Optional<StandardSolution> above =
        standards.stream()
            .filter(standard -> standard.nominal() >= high)
            .filter(standard -> below.isEmpty() || !below.get().equals(standard))
            .min(Comparator.comparingDouble(StandardSolution::nominal));
    return below.isPresent() && above.isPresent()
        ? Optional.of(new Pair(below.get(), above.get()))
        : Optional.empty();
  }

  /** Two standards for one check. */
  public record Pair(StandardSolution low, StandardSolution high) {}
}
