package feedwitness.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import org.h2.store.fs.FileBaseDefault;
import org.h2.store.fs.FilePath;
import org.h2.store.fs.FilePathWrapper;

/**
 * H2's way to the disk, with what came before the header of a file forced before the header. H2
 * writes new pages, then the header that points at them, and forces both at once. A disk that
 * writes the header first and loses power then leaves a header that points at nothing, and H2 goes
 * back, without a word, to a state from before the last forced sync. Found by cutting the power a
 * thousand times, see docs/decisions/0002-power-cuts.md.
 *
 * <p>Public only because H2 makes instances of it.
 */
public final class OrderedDisk extends FilePathWrapper {
  static final String SCHEME = "ordered:";

  /** The header is there twice, in the first two blocks. */
  private static final int HEADER_OCTETS = 8_192;

  static void register() {
    FilePath.register(new OrderedDisk());
  }

  @Override
  public String getScheme() {
    return "ordered";
  }

  @Override
  public FileChannel open(String mode) throws IOException {
    return new Channel(getBase().open(mode));
  }

  private static final class Channel extends FileBaseDefault {
    private final FileChannel base;
    private boolean unforced;

    Channel(FileChannel base) {
      this.base = base;
    }

    @Override
    public long size() throws IOException {
      return base.size();
    }

    /** Several readers at once: nothing of this object is read or changed. */
    @Override
    @SuppressWarnings("UnsynchronizedOverridesSynchronized")
    public int read(ByteBuffer to, long position) throws IOException {
      return base.read(to, position);
    }

    @Override
    public synchronized int write(ByteBuffer from, long position) throws IOException {
      boolean header = position < HEADER_OCTETS;
      if (header && unforced) {
        force(false);
      }
      unforced |= !header;
      return base.write(from, position);
    }

    @Override
    protected synchronized void implTruncate(long size) throws IOException {
      base.truncate(size);
    }

    @Override
    public synchronized void force(boolean metaData) throws IOException {
      base.force(metaData);
      unforced = false;
    }

    @Override
    public synchronized FileLock tryLock(long position, long size, boolean shared)
        throws IOException {
      return base.tryLock(position, size, shared);
    }

    @Override
    protected synchronized void implCloseChannel() throws IOException {
      base.close();
    }
  }
}
