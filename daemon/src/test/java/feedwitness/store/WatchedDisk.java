package feedwitness.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.h2.store.fs.FileBaseDefault;
import org.h2.store.fs.FilePath;
import org.h2.store.fs.FilePathWrapper;

/**
 * H2's way to the disk with somebody watching: every write, force and truncation of a history file
 * is told to its {@link Watcher} after it was done. Files nobody watches are left alone.
 */
public final class WatchedDisk extends FilePathWrapper {
  static final String SCHEME = "watched:";

  /** By the end of the path; a test's own folder makes it unique. */
  private static final Map<String, Watcher> WATCHERS = new ConcurrentHashMap<>();

  /** Is told what reaches the disk, on the thread that wrote. */
  interface Watcher {
    void written(long position, byte[] octets);

    void truncated(long size);

    void forced();

    /** Whether forcing shall reach the real disk: not where only the order of writes matters. */
    boolean forcesForReal();
  }

  /** Watches the history file of a folder from its next opening on. */
  static H2File watch(java.nio.file.Path directory, Watcher watcher, int retentionMillis) {
    FilePath.register(new WatchedDisk());
    H2File file = new H2File(directory, SCHEME, retentionMillis);
    WATCHERS.put(file.path().toString(), watcher);
    return file;
  }

  static void forget(java.nio.file.Path directory) {
    WATCHERS.remove(new H2File(directory).path().toString());
  }

  @Override
  public String getScheme() {
    return "watched";
  }

  @Override
  public FileChannel open(String mode) throws IOException {
    FileChannel base = getBase().open(mode);
    Watcher watcher = WATCHERS.get(getBase().toString());
    return watcher == null ? base : new Channel(base, watcher);
  }

  /** One open file. */
  private static final class Channel extends FileBaseDefault {
    private final FileChannel base;
    private final Watcher watcher;

    Channel(FileChannel base, Watcher watcher) {
      this.base = base;
      this.watcher = watcher;
    }

    @Override
    public long size() throws IOException {
      return base.size();
    }

    @Override
    public synchronized int read(ByteBuffer to, long position) throws IOException {
      return base.read(to, position);
    }

    @Override
    public synchronized int write(ByteBuffer from, long position) throws IOException {
      ByteBuffer copy = from.duplicate();
      int length = base.write(from, position);
      byte[] octets = new byte[length];
      copy.get(octets);
      watcher.written(position, octets);
      return length;
    }

    @Override
    protected synchronized void implTruncate(long size) throws IOException {
      base.truncate(size);
      watcher.truncated(size);
    }

    @Override
    public synchronized void force(boolean metaData) throws IOException {
      if (watcher.forcesForReal()) {
        base.force(metaData);
      }
      watcher.forced();
    }

    @Override
    public FileLock tryLock(long position, long size, boolean shared) throws IOException {
      return base.tryLock(position, size, shared);
    }

    @Override
    protected void implCloseChannel() throws IOException {
      base.close();
    }
  }
}
