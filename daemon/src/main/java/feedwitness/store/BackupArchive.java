package feedwitness.store;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** A backup as a file: a zip archive with the history file, and the configuration in a folder. */
final class BackupArchive {
  static final String ENTRY = H2File.NAME + H2File.SUFFIX;
  static final String CONFIGURATION = "configuration/";

  /** No file of a configuration comes near it. */
  private static final int LARGEST = 4 << 20;

  /** What must stay free when a backup was unpacked, octets. */
  private static final long MARGIN = 32L << 20;

  private BackupArchive() {}

  /**
   * Unpacks the history file; checksums are checked on the way.
   *
   * @throws IOException in words for people, if the archive is not whole or no backup
   */
  static void unpack(Path archive, Path target) throws IOException {
    try (ZipFile zip = new ZipFile(archive.toFile())) {
      List<String> names = zip.stream().map(ZipEntry::getName).toList();
      ZipEntry entry = zip.getEntry(ENTRY);
      if (entry == null || !names.stream().allMatch(BackupArchive::belongs)) {
        throw new IOException(
            "%s is a zip archive but no backup of Feedwitness: it holds %s instead of %s; name another file"
                .formatted(archive, few(names), ENTRY));
      }
      makeSure(target, entry.getSize());
      try (InputStream in = zip.getInputStream(entry)) {
        copy(in, target, entry.getSize());
      }
    } catch (FileNotFoundException | NoSuchFileException e) {
      throw new IOException(
          "%s cannot be read (%s); check the name and your rights"
              .formatted(archive, e.getMessage()),
          e);
    } catch (ZipException e) {
      throw new IOException(
          "%s is no whole backup (%s): it was cut short, damaged, or is another kind of file; copy it again or name an older one"
              .formatted(archive, e.getMessage()),
          e);
    }
  }

  private static boolean belongs(String name) {
    return name.equals(ENTRY) || name.startsWith(CONFIGURATION);
  }

  /**
   * Unpacks the configuration into a new folder, if the archive has one.
   *
   * @return how many files it has
   */
  static int unpackConfiguration(Path archive, Path folder) throws IOException {
    int files = 0;
    try (ZipFile zip = new ZipFile(archive.toFile())) {
      for (ZipEntry entry : zip.stream().toList()) {
        if (!entry.getName().startsWith(CONFIGURATION) || entry.isDirectory()) {
          continue;
        }
        Path target = folder.resolve(entry.getName().substring(CONFIGURATION.length())).normalize();
        if (!target.startsWith(folder) || target.equals(folder) || entry.getSize() > LARGEST) {
          throw new ZipException("%s is no file of a configuration".formatted(entry.getName()));
        }
        Files.createDirectories(target.resolveSibling(""));
        try (InputStream in = zip.getInputStream(entry)) {
          copy(in, target, entry.getSize());
        }
        files++;
      }
    }
    return files;
  }

  /** The size the archive states is not believed: no more is written than it says. */
  private static void copy(InputStream in, Path target, long size) throws IOException {
    try (var out = Files.newOutputStream(target)) {
      byte[] some = new byte[1 << 16];
      long written = 0;
      for (int got = in.read(some); got >= 0; got = in.read(some)) {
        written += got;
        if (written > size) {
          throw new ZipException("more than the %d octets it states".formatted(size));
        }
        out.write(some, 0, got);
      }
      if (written != size) {
        throw new ZipException("%d octets instead of %d".formatted(written, size));
      }
    }
  }

  private static void makeSure(Path target, long size) throws IOException {
    long free = Files.getFileStore(target.toAbsolutePath().getParent()).getUsableSpace();
    if (size < 0 || size + MARGIN > free) {
      throw new IOException(
          "%s has %d MB free, unpacking the backup needs %d MB; make room there"
              .formatted(target.toAbsolutePath().getParent(), free >> 20, (size + MARGIN) >> 20));
    }
  }

  private static String few(List<String> names) {
    return names.isEmpty()
        ? "nothing"
        : names.stream().limit(3).toList() + (names.size() > 3 ? " and more" : "");
  }
}
