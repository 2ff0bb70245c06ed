/**
 * Remembers in H2 what {@code ledger} names: hot rows, sealed hour chunks, roll-ups, bases and
 * boots. Plain JDBC, one writer thread, readers with connections of their own. Times are
 * milliseconds since 1970 UTC, conductivities of roll-ups mS/cm at 25 °C. Never interrupt a thread
 * that may be inside H2, reader or writer: it closes the database. The only room that knows SQL.
 * Not here: what a measurement means.
 */
@NullMarked
package feedwitness.store;

import org.jspecify.annotations.NullMarked;
