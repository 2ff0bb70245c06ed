/**
 * The one loop: takes samples from all sessions in order, measures them, hands on to the ledger and
 * to whoever watches; live or in replay under a given clock. One thread. Queues are bounded and say
 * what happens when full. Also the small interfaces through which {@code publish} sees the running
 * service. Not here: I/O of its own.
 */
@NullMarked
package feedwitness.engine;

import org.jspecify.annotations.NullMarked;
