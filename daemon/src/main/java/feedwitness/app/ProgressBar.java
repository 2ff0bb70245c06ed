package feedwitness.app;

import java.io.PrintWriter;

/** How far a long work is, on one line of a terminal; silent elsewhere. */
final class ProgressBar {
  private static final int WIDTH = 30;

  private final PrintWriter terminal;
  private final boolean shown;
  private final long total;
  private int percent = -1;

  /** {@code shown}: whether there is a terminal. */
  ProgressBar(PrintWriter terminal, boolean shown, long total) {
    this.terminal = terminal;
    this.shown = shown;
    this.total = Math.max(1, total);
  }

  void at(long done) {
    int now = (int) Math.min(100, 100 * done / total);
    if (shown && now != percent) {
      percent = now;
      int full = WIDTH * now / 100;
      terminal.printf(
          "\r[%s%s] %3d %%  row %d of %d",
          "#".repeat(full), ".".repeat(WIDTH - full), now, done, total);
      terminal.flush();
    }
  }

  /** Clears the line. */
  void end() {
    if (shown && percent >= 0) {
      terminal.printf("\r%s\r", " ".repeat(WIDTH + 40));
      terminal.flush();
    }
  }
}
