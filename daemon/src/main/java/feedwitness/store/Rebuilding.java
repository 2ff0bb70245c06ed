package feedwitness.store;

import feedwitness.quantity.PointName;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.tinylog.Logger;

/** Writes chunks out of pieces found in a damaged file, in the order in which they came. */
final class Rebuilding {
  private static final int CHUNKS_A_COMMIT = 100;

  private record Line(int point, int boot) {}

  private final Connection connection;
  private final Catalogue catalogue;
  private final Carving carving;
  private final Sealer sealer;
  // last sequence by first sequence, of what was written
  private final Map<Line, TreeMap<Long, Long>> written = new HashMap<>();
  private long samples;
  private long hours;
  private long minutesOnly;

  Rebuilding(Connection connection, Catalogue catalogue, Carving carving, Sealer sealer) {
    this.connection = connection;
    this.catalogue = catalogue;
    this.carving = carving;
    this.sealer = sealer;
  }

  long samples() {
    return samples;
  }

  long hours() {
    return hours;
  }

  /** Hours of which only roll-ups were left. */
  long minutesOnly() {
    return minutesOnly;
  }

  void runs() throws SQLException, IOException {
    Map<Line, List<Carving.Place>> lines = new HashMap<>();
    for (Carving.Place place : carving.runs()) {
      RunKey key = place.facts().key();
      lines.computeIfAbsent(new Line(key.point(), key.boot()), k -> new ArrayList<>()).add(place);
    }
    List<Line> inOrder = new ArrayList<>(lines.keySet());
    inOrder.sort(Comparator.comparingInt(Line::boot).thenComparingInt(Line::point));
    for (Line line : inOrder) {
      List<Carving.Place> places = lines.getOrDefault(line, List.of());
      places.sort(Comparator.comparingLong(place -> place.facts().firstSequence()));
      line(line, places);
      connection.commit();
    }
  }

  /** Pieces overlap: a forced sync holds what a chunk holds too. Each sample is written once. */
  private void line(Line line, List<Carving.Place> places) throws SQLException, IOException {
    PointName name = catalogue.point(line.point()).orElseThrow();
    TreeMap<Long, Kept> waiting = new TreeMap<>();
    for (Carving.Place place : places) {
      // no piece to come holds anything earlier
      flush(line, waiting, waiting.headMap(place.facts().firstSequence()).size(), false);
      try {
        for (Kept kept : carving.run(place, name).samples()) {
          waiting.putIfAbsent(kept.sample().stamp().sequence(), kept);
        }
      } catch (DamagedException e) {
        Logger.warn(e, "history: a piece of {} cannot be read again", name);
      }
    }
    flush(line, waiting, waiting.size(), true);
  }

  private void flush(Line line, NavigableMap<Long, Kept> waiting, int count, boolean last)
      throws SQLException {
    List<Kept> complete = new ArrayList<>(waiting.values()).subList(0, count);
    List<Run> runs = Run.cut(line.point(), complete);
    // the last may go on in the next piece
    for (Run run : last || runs.isEmpty() ? runs : runs.subList(0, runs.size() - 1)) {
      write(line, run);
      run.samples().forEach(kept -> waiting.remove(kept.sample().stamp().sequence()));
    }
  }

  private void write(Line line, Run run) throws SQLException {
    sealer.write(connection, run);
    ChunkFacts facts = ChunkFacts.of(run);
    written
        .computeIfAbsent(line, k -> new TreeMap<>())
        .put(facts.firstSequence(), facts.lastSequence());
    samples += run.samples().size();
    hours++;
    if (hours % CHUNKS_A_COMMIT == 0) {
      connection.commit();
    }
  }

  /** Roll-ups of hours whose samples were let go of, or are beyond saving. */
  void minutes() throws SQLException, IOException {
    ChunkWriter writer = new ChunkWriter(connection);
    for (Carving.Place place : carving.minutes()) {
      ChunkFacts facts = place.facts();
      TreeMap<Long, Long> there =
          written.computeIfAbsent(
              new Line(facts.key().point(), facts.key().boot()), k -> new TreeMap<>());
      Map.Entry<Long, Long> before = there.floorEntry(facts.lastSequence());
      if (before != null && before.getValue() >= facts.firstSequence()) {
        continue;
      }
      try {
        writer.writeRollups(facts, carving.rollups(place));
        there.put(facts.firstSequence(), facts.lastSequence());
        minutesOnly++;
      } catch (DamagedException e) {
        Logger.warn(e, "history: roll-ups of an hour cannot be read again");
      }
    }
    writer.finish();
    connection.commit();
  }
}
