package feedwitness.store;

import java.util.Arrays;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * Wraps octets for keeping: deflated where that is shorter, with a CRC-32 over all, so that a
 * flipped bit on a flash card is found and never becomes a sample.
 */
final class Envelope {
  /**
   * What is inside, told by the first octet, so that pieces can be found in a file that no database
   * opens any more. By their number: append only.
   */
  enum Kind {
    /** Not told. */
    ANY(1),
    /** A chunk. */
    RUN(2),
    /** What a forced sync kept. */
    HOT(3),
    /** The minutes of a chunk, with what they are of. */
    MINUTES(4),
    /** A name, a basis, a boot or a dating. */
    COPY(5),
    /** A piece of evidence. */
    EVIDENCE(6),
    /** What belongs to a piece of evidence. */
    PICTURE(7);

    private final int format;

    Kind(int format) {
      this.format = format;
    }

    int format() {
      return format;
    }

    static Optional<Kind> of(int format) {
      return Arrays.stream(values()).filter(kind -> kind.format == format).findFirst();
    }
  }

  private static final int PLAIN = 0;
  private static final int DEFLATED = 1;

  /** Below this deflating gains nothing. */
  private static final int WORTH_DEFLATING = 96;

  private static final int LEVEL = 4;

  private static final int CRC_OCTETS = 4;

  /** Far above any chunk; keeps a wrong length from exhausting memory. */
  private static final int MAX_PLAIN = 64 * 1024 * 1024;

  private Envelope() {}

  static byte[] pack(byte[] plain) {
    return pack(Kind.ANY, plain);
  }

  /** Not deflated: for what is read by the hundred at once. */
  static byte[] wrap(byte[] plain) {
    return seal(Kind.ANY, plain, plain);
  }

  static byte[] pack(Kind kind, byte[] plain) {
    return seal(kind, plain, plain.length < WORTH_DEFLATING ? plain : deflate(plain));
  }

  private static byte[] seal(Kind kind, byte[] plain, byte[] body) {
    boolean shorter = body.length < plain.length;
    ByteSink sink = new ByteSink();
    sink.octet(kind.format);
    sink.octet(shorter ? DEFLATED : PLAIN);
    sink.unsigned(plain.length);
    sink.octets(shorter ? body : plain);
    int crc = (int) crc(sink.toArray(), sink.length());
    for (int shift = 24; shift >= 0; shift -= 8) {
      sink.octet(crc >>> shift);
    }
    return sink.toArray();
  }

  static byte[] unpack(byte[] packed) throws DamagedException {
    int end = packed.length - CRC_OCTETS;
    if (end < 3) {
      throw new DamagedException("only %d octets".formatted(packed.length));
    }
    int kept = 0;
    for (int i = end; i < packed.length; i++) {
      kept = kept << 8 | (packed[i] & 0xff);
    }
    if (kept != (int) crc(packed, end)) {
      throw new DamagedException("checksum of %d octets does not fit".formatted(packed.length));
    }
    ByteSource source = new ByteSource(packed, 0, end);
    int format = source.octet();
    int mode = source.octet();
    if (Kind.of(format).isEmpty() || mode > DEFLATED) {
      throw new DamagedException("format %d/%d is not known".formatted(format, mode));
    }
    int length = source.count(MAX_PLAIN);
    byte[] body = source.octets(source.remaining());
    byte[] plain = mode == PLAIN ? body : inflate(body, length);
    if (plain.length != length) {
      throw new DamagedException("%d octets instead of %d".formatted(plain.length, length));
    }
    return plain;
  }

  /** What an envelope that unpacks says of itself. */
  static Kind kind(byte[] packed) {
    return Kind.of(packed[0]).orElse(Kind.ANY);
  }

  /**
   * Whether an envelope whose kind is told begins at a place among octets of any kind.
   *
   * @return how long it is; 0 if there is none whole and sound within the first {@code end} octets
   */
  static int lengthAt(byte[] octets, int start, int end) {
    int format = octets[start];
    if (format <= Kind.ANY.format || format > Kind.PICTURE.format || end - start < 3 + CRC_OCTETS) {
      return 0;
    }
    int mode = octets[start + 1];
    if (mode != PLAIN && mode != DEFLATED) {
      return 0;
    }
    try {
      ByteSource source = new ByteSource(octets, start + 2, end);
      int length = source.count(MAX_PLAIN);
      int body = end - source.remaining();
      int after = body + (mode == PLAIN ? length : deflatedLength(octets, body, end, length));
      if (after <= body || after > end - CRC_OCTETS) {
        return 0;
      }
      unpack(Arrays.copyOfRange(octets, start, after + CRC_OCTETS));
      return after + CRC_OCTETS - start;
    } catch (DamagedException e) {
      return 0;
    }
  }

  /** How many octets it takes to inflate to exactly a length; 0 if they never do. */
  private static int deflatedLength(byte[] octets, int start, int end, int length) {
    Inflater inflater = new Inflater(true);
    try {
      inflater.setInput(octets, start, end - start);
      byte[] out = new byte[8_192];
      while (!inflater.finished() && inflater.getBytesWritten() <= length) {
        if (inflater.inflate(out) == 0) {
          break;
        }
      }
      return inflater.finished() && inflater.getBytesWritten() == length
          ? (int) inflater.getBytesRead()
          : 0;
    } catch (DataFormatException e) {
      return 0;
    } finally {
      inflater.end();
    }
  }

  private static long crc(byte[] octets, int end) {
    CRC32 crc = new CRC32();
    crc.update(octets, 0, end);
    return crc.getValue();
  }

  private static byte[] deflate(byte[] plain) {
    // small differences with little repetition: smaller than the default level and twice as fast
    Deflater deflater = new Deflater(LEVEL, true);
    try {
      deflater.setStrategy(Deflater.FILTERED);
      deflater.setInput(plain);
      deflater.finish();
      // anything that does not fit into the plain length is not worth keeping deflated
      byte[] out = new byte[plain.length];
      int length = 0;
      int idle = 0;
      while (!deflater.finished() && length < out.length && idle < 2) {
        int more = deflater.deflate(out, length, out.length - length);
        // the first call may only take note of the strategy
        idle = more == 0 ? idle + 1 : 0;
        length += more;
      }
      return deflater.finished() ? Arrays.copyOf(out, length) : plain;
    } finally {
      deflater.end();
    }
  }

  private static byte[] inflate(byte[] body, int length) throws DamagedException {
    Inflater inflater = new Inflater(true);
    try {
      inflater.setInput(body);
      byte[] out = new byte[length];
      int got = 0;
      while (got < length && !inflater.finished()) {
        int more = inflater.inflate(out, got, length - got);
        if (more == 0) {
          break;
        }
        got += more;
      }
      return Arrays.copyOf(out, got);
    } catch (DataFormatException e) {
      throw new DamagedException("cannot be inflated: " + e.getMessage());
    } finally {
      inflater.end();
    }
  }
}
