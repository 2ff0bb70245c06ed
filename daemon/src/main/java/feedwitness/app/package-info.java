/**
 * Puts the service together: the command line and the one hand-written wiring. Nothing imports this
 * room.
 */
@NullMarked
package feedwitness.app;

import org.jspecify.annotations.NullMarked;
