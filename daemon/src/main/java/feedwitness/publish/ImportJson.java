package feedwitness.publish;

import feedwitness.engine.ImportOutcome;

/**
 * What became of imported rows.
 *
 * @param taken how many are new
 * @param known how many were there already
 * @param retired how many are of minutes of which only roll-ups are kept
 * @param boot with {@code sequence}: safe on disk as soon as the durable mark reaches it
 */
record ImportJson(int taken, int known, int retired, int boot, long sequence) {
  static ImportJson of(ImportOutcome.Taken taken) {
    return new ImportJson(
        taken.taken(), taken.known(), taken.retired(), taken.boot(), taken.sequence());
  }
}
