/**
 * Reads TOML into sites and device profiles. Every error is reported with file, line, column and
 * remedy, all of them at once; nothing is silently repaired. Not here: starting anything.
 */
@NullMarked
package feedwitness.settings;

import org.jspecify.annotations.NullMarked;
