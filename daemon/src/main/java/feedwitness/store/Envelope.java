package feedwitness.store;

import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * Wraps octets for keeping: deflated where that is shorter, with a CRC-32 over all, so that a
 * flipped bit on a flash card is found and never becomes a sample.
 */
final class Envelope {
  private static final int FORMAT = 1;
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
    byte[] body = plain.length < WORTH_DEFLATING ? plain : deflate(plain);
    boolean shorter = body.length < plain.length;
    ByteSink sink = new ByteSink();
    sink.octet(FORMAT);
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
    if (format != FORMAT || mode > DEFLATED) {
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
