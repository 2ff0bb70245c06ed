package feedwitness.app.table;

import java.time.Instant;

/**
 * Rows of a table between two changes of its clock.
 *
 * @param number from 1
 * @param firstLine line of its first reading
 * @param first time of its first reading, as the table has it
 * @param clockSet whether its clock can have been right
 */
public record Stretch(int number, long firstLine, Instant first, boolean clockSet) {}
