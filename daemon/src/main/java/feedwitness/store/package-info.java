/**
 * Remembers in H2 what {@code ledger} names: hot rows, sealed hour chunks, roll-ups, bases and
 * boots. Plain JDBC, one writer thread, readers with connections of their own. Never interrupt a
 * thread that may be inside H2: it closes the database. The only room that knows SQL. Not here:
 * what a measurement means.
 */
@NullMarked
package feedwitness.store;

import org.jspecify.annotations.NullMarked;
