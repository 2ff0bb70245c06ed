/**
 * The grower's place: measuring points, feed lines that tie them together, where each hangs and how
 * its readings are to be referred to 25 °C, and the time zone. Values only, checked on
 * construction; read from TOML by {@code settings}. No I/O.
 */
@NullMarked
package feedwitness.site;

import org.jspecify.annotations.NullMarked;
