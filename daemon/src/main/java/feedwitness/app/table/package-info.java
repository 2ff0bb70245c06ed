/**
 * Understands tables that other programs and loggers wrote: separators, headings, numbers, times,
 * units, and clocks that were reset in mid-file. It serves one command and knows only {@code
 * quantity}, so it is a corner of this room rather than a room of its own. Pure: text in, readings
 * or problems out. Times are {@link java.time.Instant}; conductivity and temperature stay in the
 * unit of the table. Bounded memory whatever the file. Not here: files, the console, the service.
 */
@NullMarked
package feedwitness.app.table;

import org.jspecify.annotations.NullMarked;
