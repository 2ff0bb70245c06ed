/**
 * One session a port, each with a thread of its own: opens, asks or listens, frames, decodes,
 * stamps, reports silence and loss as {@code Missing} with a cause, retries with back-off for ever.
 * Not here: what a reading means for the solution (measurement) or who wants it (engine).
 */
@NullMarked
package feedwitness.acquire;

import org.jspecify.annotations.NullMarked;
