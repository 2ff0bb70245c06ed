package feedwitness.publish.message;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;

/**
 * A socket that takes in only so many octets in all: the mail library reads a line to its end,
 * however long a server makes it. Closing it from another thread ends whatever waits on it, TLS
 * above it included.
 */
final class LimitedSocket extends Socket {
  private final int most;

  LimitedSocket(int most) {
    this.most = most;
  }

  @Override
  public InputStream getInputStream() throws IOException {
    return new Limited(super.getInputStream(), most);
  }

  private static final class Limited extends FilterInputStream {
    private final int most;
    private int left;

    Limited(InputStream in, int most) {
      super(in);
      this.most = most;
      this.left = most;
    }

    @Override
    public int read() throws IOException {
      count(1);
      return super.read();
    }

    @Override
    public int read(byte[] octets, int offset, int length) throws IOException {
      int read = super.read(octets, offset, Math.min(length, Math.max(1, left)));
      count(Math.max(0, read));
      return read;
    }

    private void count(int octets) throws IOException {
      left -= octets;
      if (left < 0) {
        throw new IOException("the server sent more than %d octets".formatted(most));
      }
    }
  }
}
