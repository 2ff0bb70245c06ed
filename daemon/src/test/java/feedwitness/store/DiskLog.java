package feedwitness.store;

import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * What went to the disk, in order, and what a power cut at any moment would have left of it: all
 * that was forced, and of what came after it any part in any order.
 */
final class DiskLog implements WatchedDisk.Watcher {
  /** What a disk writes whole. */
  private static final int SECTOR = 512;

  /** How many events before the cut are told. */
  private static final int TOLD = 8;

  private interface Event {}

  private record Written(long position, Octets octets) implements Event {
    @Override
    public String toString() {
      return "%d octets at %d".formatted(octets.length(), position);
    }
  }

  private record Truncated(long size) implements Event {}

  private record Forced() implements Event {}

  private record Marked(int boot, long sequence) implements Event {}

  /**
   * What was left, and the highest mark that had been published before.
   *
   * @param story what became of each write that was not forced
   */
  record Cut(Octets left, int boot, long sequence, String story) {}

  private final byte[] start;
  private final List<Event> events = new ArrayList<>();

  /**
   * @param start what the file held
   */
  DiskLog(byte[] start) {
    this.start = start.clone();
  }

  @Override
  public synchronized void written(long position, byte[] octets) {
    events.add(new Written(position, Octets.of(octets)));
  }

  @Override
  public synchronized void truncated(long size) {
    events.add(new Truncated(size));
  }

  @Override
  public synchronized void forced() {
    events.add(new Forced());
  }

  @Override
  public boolean forcesForReal() {
    return false;
  }

  /** Notes that a durable mark was seen by whoever asked. */
  synchronized void marked(int boot, long sequence) {
    events.add(new Marked(boot, sequence));
  }

  synchronized int size() {
    return events.size();
  }

  synchronized long forces() {
    return events.stream().filter(e -> e instanceof Forced).count();
  }

  /** Cuts the power just before the given event. */
  synchronized Cut cut(int before, Random random) {
    Image image = new Image(start);
    int forced = 0;
    Marked mark = new Marked(0, 0);
    for (int i = 0; i < before; i++) {
      Event event = events.get(i);
      if (event instanceof Forced) {
        forced = i + 1;
      } else if (event instanceof Marked marked) {
        mark = marked;
      }
    }
    events.subList(0, forced).forEach(event -> apply(image, event));
    StringBuilder story =
        new StringBuilder(
            "%d octets after %s"
                .formatted(image.size, events.subList(Math.max(0, forced - TOLD), forced)));
    leaveSomeOf(events.subList(forced, before), image, random, story);
    return new Cut(Octets.of(image.octets()), mark.boot(), mark.sequence(), story.toString());
  }

  private static void apply(Image image, Event event) {
    if (event instanceof Written written) {
      image.write(written.position(), written.octets().toArray(), written.octets().length());
    } else if (event instanceof Truncated truncated) {
      image.truncate(truncated.size());
    }
  }

  /** The last of them may have been under way; any of the others may still be in a cache. */
  private static void leaveSomeOf(
      List<Event> unforced, Image image, Random random, StringBuilder story) {
    int keptOutOfEight = random.nextInt(9);
    for (int i = 0; i < unforced.size(); i++) {
      Event event = unforced.get(i);
      boolean torn = random.nextInt(i == unforced.size() - 1 ? 2 : 8) == 0;
      story.append(", ").append(event);
      if (event instanceof Written written && torn) {
        tear(image, written, random);
        story.append(" torn");
      } else if (random.nextInt(8) < keptOutOfEight) {
        apply(image, event);
        story.append(" done");
      } else {
        story.append(" not done");
      }
    }
  }

  private static void tear(Image image, Written written, Random random) {
    byte[] octets = written.octets().toArray();
    if (random.nextInt(6) == 0) {
      // a flash card may lose a whole page it was programming, here both headers of the file
      random.nextBytes(octets);
      image.write(written.position(), octets, octets.length);
      return;
    }
    if (octets.length > SECTOR && random.nextBoolean()) {
      for (int from = 0; from < octets.length; from += SECTOR) {
        if (random.nextBoolean()) {
          byte[] sector = Arrays.copyOfRange(octets, from, Math.min(octets.length, from + SECTOR));
          image.write(written.position() + from, sector, sector.length);
        }
      }
      return;
    }
    int until = random.nextInt(octets.length + 1);
    image.write(written.position(), octets, until);
    if (random.nextBoolean()) {
      // the sector that was being written when the power went
      long endOfSector = ((written.position() + until) / SECTOR + 1) * SECTOR;
      int rest = (int) Math.min(endOfSector - written.position(), octets.length) - until;
      byte[] junk = new byte[rest];
      random.nextBytes(junk);
      image.write(written.position() + until, junk, junk.length);
    }
  }

  /** A file in memory; what was never written is zero. */
  private static final class Image {
    private byte[] content;
    private int size;

    Image(byte[] start) {
      content = start.clone();
      size = start.length;
    }

    void write(long position, byte[] octets, int length) {
      int end = Math.toIntExact(position + length);
      if (end > content.length) {
        content = Arrays.copyOf(content, Math.max(end, content.length * 2));
      }
      System.arraycopy(octets, 0, content, (int) position, length);
      size = Math.max(size, end);
    }

    void truncate(long to) {
      if (to < size) {
        Arrays.fill(content, (int) to, size, (byte) 0);
        size = (int) to;
      }
    }

    byte[] octets() {
      return Arrays.copyOf(content, size);
    }
  }
}
