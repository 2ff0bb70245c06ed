package feedwitness.ledger;

import feedwitness.measurement.Measurement;

/** Takes measurements for keeping. Called by the engine's thread only. */
public interface MeasurementLedger {

  /**
   * Hands a measurement to the writer, in (boot, sequence) order: the durable mark is the highest
   * that is on disk. Readers of the history see it from now on. Waits while the writer's bounded
   * queue is full: the engine then slows down, and the wires' own queues take up what arrives.
   * While recording is stopped ({@link #trouble} says why) it does not wait: what the queue cannot
   * take is counted, told as trouble, and put on record as not recorded when recording resumes; the
   * mark promises nothing for those.
   */
  void append(Measurement measurement);

  /** Everything at or below this mark is on disk. */
  DurableMark durableThrough();

  /** What, if anything, keeps the ledger from recording, for people; empty when all is well. */
  java.util.Optional<String> trouble();
}
