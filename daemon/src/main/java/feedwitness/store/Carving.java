package feedwitness.store;

import feedwitness.ledger.Evidence;
import feedwitness.quantity.PointName;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What the envelopes in a file hold, whatever the state of the database in it. What the database
 * had let go of but not written over is found as well; it is just as true.
 */
final class Carving implements AutoCloseable {
  /** Where it does not matter whose samples they are. */
  static final PointName NOBODY = new PointName("nobody");

  private final FileChannel channel;
  private final List<Copy> copies = new ArrayList<>();
  private final Map<Long, Evidence> evidence = new TreeMap<>();
  private final Map<Long, EvidenceCodec.Picture> pictures = new TreeMap<>();
  private final List<Place> runs = new ArrayList<>();
  private final List<Place> minutes = new ArrayList<>();
  private final Set<ChunkFacts> known = new HashSet<>();

  /**
   * Where something lies.
   *
   * @param index of the run within what a forced sync kept
   */
  record Place(long position, int length, int index, ChunkFacts facts) {}

  private Carving(FileChannel channel) {
    this.channel = channel;
  }

  /** Reads the whole file once. */
  static Carving of(Path file) throws IOException {
    Carving carving = new Carving(FileChannel.open(file, StandardOpenOption.READ));
    try {
      new EnvelopeScan(carving.channel, EnumSet.allOf(Envelope.Kind.class)).run(carving::take);
    } catch (IOException | RuntimeException e) {
      carving.close();
      throw e;
    }
    return carving;
  }

  List<Copy> copies() {
    return copies;
  }

  /** Runs, from chunks and forced syncs, none twice. */
  List<Place> runs() {
    return runs;
  }

  /** Records by id: none is ever altered, so any copy will do. */
  Collection<Evidence> evidence() {
    return evidence.values();
  }

  Collection<EvidenceCodec.Picture> pictures() {
    return pictures.values();
  }

  List<Place> minutes() {
    return minutes;
  }

  private void take(long position, byte[] packed) {
    try {
      switch (Envelope.kind(packed)) {
        case COPY -> copies.add(Copy.read(packed));
        case EVIDENCE -> {
          Evidence record = EvidenceCodec.unpack(packed);
          evidence.put(record.id(), record);
        }
        case PICTURE -> {
          EvidenceCodec.Picture picture = EvidenceCodec.unpackPicture(packed);
          pictures.put(picture.id(), picture);
        }
        case MINUTES -> {
          ChunkFacts facts = ChunkFacts.read(new ByteSource(Envelope.unpack(packed)));
          minutes.add(new Place(position, packed.length, 0, facts));
        }
        case RUN, HOT -> {
          List<Run> found = unpack(packed, NOBODY);
          for (int i = 0; i < found.size(); i++) {
            ChunkFacts facts = ChunkFacts.of(found.get(i));
            if (known.add(facts)) {
              runs.add(new Place(position, packed.length, i, facts));
            }
          }
        }
        case ANY -> {
          // does not say what it is
        }
      }
    } catch (DamagedException | RuntimeException e) {
      // looked like one of ours and was not
    }
  }

  private static List<Run> unpack(byte[] packed, PointName point) throws DamagedException {
    if (Envelope.kind(packed) == Envelope.Kind.HOT) {
      return HotCodec.unpack(packed, key -> true, point);
    }
    ByteSource source = new ByteSource(Envelope.unpack(packed));
    return List.of(RunCodec.read(source, RunCodec.readKey(source), point));
  }

  private byte[] octets(Place place) throws IOException {
    byte[] packed = new byte[place.length()];
    EnvelopeScan.read(channel, place.position(), packed);
    return packed;
  }

  Run run(Place place, PointName point) throws IOException, DamagedException {
    return unpack(octets(place), point).get(place.index());
  }

  List<Rollup> rollups(Place place) throws IOException, DamagedException {
    return RollupCodec.unpack(octets(place));
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
