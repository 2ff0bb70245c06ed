package feedwitness.settings;

import org.jspecify.annotations.Nullable;
import org.tomlj.TomlPosition;

/** A place in a file; line and column count from 1. */
record Spot(int line, int column) implements Comparable<Spot> {
  static final Spot START = new Spot(1, 1);

  static Spot of(@Nullable TomlPosition position) {
    return position == null ? START : new Spot(position.line(), position.column());
  }

  @Override
  public int compareTo(Spot other) {
    return line != other.line
        ? Integer.compare(line, other.line)
        : Integer.compare(column, other.column);
  }
}
