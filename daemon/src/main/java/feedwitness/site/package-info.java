/**
 * The grower's place: measuring points, where each hangs and how its readings are to be referred to
 * 25 °C, which limits hold there, which strengths are fed, and the time zone. Values only, checked
 * on construction; read from TOML by {@code settings}. No I/O.
 */
@NullMarked
package feedwitness.site;

import org.jspecify.annotations.NullMarked;
