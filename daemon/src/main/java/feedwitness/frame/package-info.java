/**
 * Finds whole messages in a stream of octets, rejects damaged ones with a reason and always
 * resynchronises. Pure: octets in, outcomes out; state lives in the framer object, owned by one
 * thread. No clock, no port, no meaning of fields. A buffer is bounded; no input makes a framer
 * throw or hang. Not here: what a field means (sample), when to ask (acquire).
 */
@NullMarked
package feedwitness.frame;

import org.jspecify.annotations.NullMarked;
