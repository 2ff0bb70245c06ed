package feedwitness.store;

import feedwitness.quantity.TimeSource;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** A service of its own in a Java machine of its own, to be killed without warning. */
final class OtherProcess {
  private OtherProcess() {}

  static Process start(Path directory, String mode) throws IOException {
    return start(List.of(), directory, mode);
  }

  /**
   * The same without the right of the administrator to write where nobody may, if the tests have
   * it.
   */
  static Process startWithoutPrivilege(Path directory, String mode) throws IOException {
    boolean privileged = "root".equals(System.getProperty("user.name"));
    return start(
        privileged
            ? List.of("setpriv", "--bounding-set", "-dac_override,-dac_read_search")
            : List.of(),
        directory,
        mode);
  }

  private static Process start(List<String> before, Path directory, String mode)
      throws IOException {
    List<String> command = new ArrayList<>(before);
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx96m",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            OtherProcess.class.getName(),
            directory.toString(),
            mode));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  /**
   * Opens the ledger of a directory and says so, or why not. With {@code append} it then appends
   * and prints each new durable mark; with {@code hold} it waits for its input to end. With {@code
   * take} it holds the bare database file.
   */
  public static void main(String[] arguments) throws Exception {
    if (arguments[1].equals("take")) {
      take(Path.of(arguments[0]));
      return;
    }
    StoreSettings settings = new StoreSettings(Path.of(arguments[0]), Duration.ofMillis(20), 1_024);
    LedgerOpening opening = H2Ledger.open(settings, TimeSource.system());
    if (opening instanceof LedgerOpening.Refused refused) {
      System.out.println("refused " + refused.reason() + " " + refused.message());
      return;
    }
    H2Ledger ledger = ((LedgerOpening.Opened) opening).ledger();
    System.out.println("opened " + ledger.boot());
    if (arguments[1].equals("append")) {
      append(ledger);
    } else {
      waitForLeave();
    }
    ledger.close();
  }

  /** Holds the database itself, without a ledger. */
  private static void take(Path directory) throws Exception {
    try (FileLook look = new FileLook(directory)) {
      look.run("select 1");
      System.out.print("taken");
      System.out.flush();
      waitForLeave();
    }
  }

  private static void waitForLeave() throws IOException {
    while (System.in.read() >= 0) {
      // held until whoever started us lets go
    }
  }

  /** Two minutes a sample, so that hours are sealed all the time; bounded if nobody kills us. */
  private static void append(H2Ledger ledger) {
    long told = 0;
    for (int i = 1; i <= 400_000; i++) {
      Instant wall = Nursery.MONDAY.plusSeconds(120L * i);
      ledger.append(
          Nursery.measured(
              i % 2 == 0 ? Nursery.LINE : Nursery.TANK,
              Nursery.stamp(ledger.boot(), i, wall),
              value(i),
              20));
      long durable = ledger.durableThrough().sequence();
      if (durable > told) {
        told = durable;
        System.out.println("durable " + durable);
      }
    }
  }

  /** What sample {@code i} shows, mS/cm. */
  static double value(long i) {
    return 1 + i % 1_000 / 1_000.0;
  }
}
