package feedwitness.publish.message;

import feedwitness.site.Urgency;

/** A way to reach people. One attempt at a time. */
interface Channel extends AutoCloseable {
  String name();

  /** Where it leads, for people; no secret. */
  String leadsTo();

  Urgency least();

  /** Whether messages are JSON rather than text. */
  boolean json();

  /** Tries once. Blocks for a bounded time, and never throws for what a receiver may do. */
  Delivery deliver(Letter letter);

  /** Ends an attempt that is going on. */
  @Override
  void close();
}
