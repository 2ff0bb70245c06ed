package feedwitness.store;

import feedwitness.sample.Sample;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How far a forced sync, or a database, goes: the last sample taken here, in (boot, sequence)
 * order. Imported samples do not count: their hours may be let go of at any time.
 */
record Top(int boot, long sequence) implements Comparable<Top> {
  private static final Comparator<Top> ORDER =
      Comparator.comparingInt(Top::boot).thenComparingLong(Top::sequence);

  @Override
  public int compareTo(Top other) {
    return ORDER.compare(this, other);
  }

  /** Of the runs of one sync; empty if all were imported. */
  static Optional<Top> of(List<Run> runs) {
    return runs.stream()
        .flatMap(run -> run.samples().stream())
        .map(Kept::sample)
        .filter(sample -> !Imports.isImported(sample))
        .map(Sample::stamp)
        .max(Comparator.naturalOrder())
        .map(stamp -> new Top(stamp.boot(), stamp.sequence()));
  }

  /**
   * What a database knows: of the last chunk of each point, which keeps its minutes for ever, and
   * of the rows not sealed yet. Changes nothing. Rows that cannot be read are passed over.
   */
  static Optional<Top> known(Connection connection) throws SQLException {
    return Stream.concat(
            each(
                connection,
                "select r.packed from point p join rollup_minute r on r.k = p.last_chunk",
                packed -> {
                  ChunkFacts facts = ChunkFacts.read(new ByteSource(Envelope.unpack(packed)));
                  return Optional.of(new Top(facts.key().boot(), facts.lastSequence()));
                }),
            each(
                connection,
                "select packed from hot",
                packed -> of(HotCodec.unpack(packed, key -> true, Carving.NOBODY))))
        .max(Comparator.naturalOrder());
  }

  private interface Reading {
    Optional<Top> of(byte[] packed) throws DamagedException;
  }

  private static Stream<Top> each(Connection connection, String select, Reading reading)
      throws SQLException {
    Stream.Builder<Top> tops = Stream.builder();
    try (PreparedStatement statement = connection.prepareStatement(select);
        ResultSet row = statement.executeQuery()) {
      while (row.next()) {
        try {
          reading.of(row.getBytes(1)).ifPresent(tops);
        } catch (DamagedException e) {
          // told where it is read for its own sake
        }
      }
    }
    return tops.build();
  }
}
