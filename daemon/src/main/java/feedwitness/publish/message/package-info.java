/**
 * Reaches people who are elsewhere: by mail and by signed webhook. What is to be told is put on
 * record first, tried until it is delivered or given up, and never sent twice under two names.
 * Threads: one that decides, one on demand for each channel that delivers; the caller of {@code
 * tell} never waits. Every wait for a receiver is bounded. Secrets stay in their files: nothing
 * here puts one into a record, a log or an answer. Not here: what an alarm is.
 */
@NullMarked
package feedwitness.publish.message;

import org.jspecify.annotations.NullMarked;
