/**
 * What the machine itself can tell: whether its clock is set, how much room a disk has. Asked
 * often, so answers are cheap; may be asked from any thread. What the machine does not tell is
 * unknown, never good. The only room with native calls besides {@code simulate}. Not here: what
 * follows from the answers.
 */
@NullMarked
package feedwitness.host;

import org.jspecify.annotations.NullMarked;
