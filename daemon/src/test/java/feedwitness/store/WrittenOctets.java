package feedwitness.store;

import java.util.concurrent.atomic.AtomicLong;

/** Counts what H2 writes. */
record WrittenOctets(AtomicLong octets, boolean forcesForReal) implements WatchedDisk.Watcher {
  @Override
  public void written(long position, byte[] written) {
    octets.addAndGet(written.length);
  }

  @Override
  public void truncated(long size) {}

  @Override
  public void forced() {}
}
