package feedwitness.store;

import feedwitness.measurement.Basis;
import feedwitness.measurement.Measurement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Samples of one point on their way to the file. They are cut into pieces while they are at hand:
 * the writer would have to fetch each of a million from memory once more. Not for several threads;
 * not changed any more once the writer has it.
 */
final class Lane {
  private final List<Piece> pieces = new ArrayList<>();
  private final Set<Basis> bases = new LinkedHashSet<>();
  private @Nullable Piece open;
  private @Nullable Measurement last;
  private boolean inOrder = true;

  void add(Measurement measurement) {
    Measurement before = last;
    if (before == null || !sameBasis(before, measurement)) {
      bases.add(measurement.basis());
    }
    inOrder &= before == null || before.stamp().compareTo(measurement.stamp()) <= 0;
    last = measurement;
    Piece piece = open;
    if (piece == null || !piece.takes(measurement.stamp())) {
      piece = new Piece(measurement.stamp(), piece == null ? 16 : piece.measurements().size());
      pieces.add(piece);
      open = piece;
    }
    piece.add(measurement);
  }

  /** Cheap, and false is no answer: another object is only looked up, which is slower. */
  @SuppressWarnings("ReferenceEquality")
  static boolean sameBasis(Measurement one, Measurement other) {
    return one.basis() == other.basis();
  }

  /** All that occur. */
  Set<Basis> bases() {
    return bases;
  }

  /** In (boot, sequence) order, whatever the order of arrival. */
  List<Piece> pieces() {
    if (inOrder) {
      return pieces;
    }
    List<Measurement> sorted = new ArrayList<>();
    copyTo(sorted);
    sorted.sort(Comparator.comparing(Measurement::stamp));
    Lane straight = new Lane();
    sorted.forEach(straight::add);
    return straight.pieces;
  }

  /** In the order of arrival. */
  void copyTo(List<Measurement> all) {
    pieces.forEach(piece -> all.addAll(piece.measurements()));
  }
}
