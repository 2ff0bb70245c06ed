/**
 * Device profiles: what must be known of an instrument family to talk to it and to understand what
 * it says. Values only; read from TOML by {@code settings}. Units are named in each field. No I/O,
 * no decoding (that is {@code sample}), nothing about where a probe is mounted (that is {@code
 * site}).
 */
@NullMarked
package feedwitness.profile;

import org.jspecify.annotations.NullMarked;
