package feedwitness.store;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What a run of the benchmark is asked for, and what it runs on. */
record BenchmarkOptions(long readings, int hours, int years, int cuts, int kills, Path folder) {
  static BenchmarkOptions parse(String[] arguments) {
    Map<String, String> given = new HashMap<>();
    for (String argument : arguments) {
      String[] pair = argument.split("=", 2);
      if (pair.length != 2
          || !List.of("readings", "hours", "years", "cuts", "kills", "folder").contains(pair[0])) {
        throw new IllegalArgumentException(
            "'%s' is none of readings=N hours=N years=N cuts=N kills=N folder=DIR"
                .formatted(argument));
      }
      given.put(pair[0], pair[1]);
    }
    return new BenchmarkOptions(
        Long.parseLong(given.getOrDefault("readings", "10000000")),
        Integer.parseInt(given.getOrDefault("hours", "24")),
        Integer.parseInt(given.getOrDefault("years", "10")),
        Integer.parseInt(given.getOrDefault("cuts", "1000")),
        Integer.parseInt(given.getOrDefault("kills", "20")),
        Path.of(given.getOrDefault("folder", "target")));
  }

  String text() {
    return "readings=%d hours=%d years=%d cuts=%d kills=%d"
        .formatted(readings, hours, years, cuts, kills);
  }

  String machine() throws IOException {
    String processor =
        Files.readAllLines(Path.of("/proc/cpuinfo")).stream()
            .filter(line -> line.startsWith("model name") || line.startsWith("Model"))
            .map(line -> line.substring(line.indexOf(':') + 1).strip())
            .findFirst()
            .orElse("unnamed processor");
    FileStore store = Files.getFileStore(folder);
    return "%d × %s, %s %s, %s"
        .formatted(
            Runtime.getRuntime().availableProcessors(),
            processor,
            System.getProperty("os.name"),
            System.getProperty("os.version"),
            store.type());
  }

  /** Octets this process sent to a disk, as the kernel counts them. */
  static long writtenByThisProcess() throws IOException {
    return Files.readAllLines(Path.of("/proc/self/io")).stream()
        .filter(line -> line.startsWith("write_bytes:"))
        .mapToLong(line -> Long.parseLong(line.substring(12).strip()))
        .sum();
  }

  /** Processor time of all threads of this process so far. */
  static long processorNanos() {
    return ManagementFactory.getPlatformMXBean(com.sun.management.OperatingSystemMXBean.class)
        .getProcessCpuTime();
  }

  static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
