/**
 * Shows what the service knows: the page, the REST interface, the event stream. The only room with
 * JSON and HTTP. A slow or hostile client delays no one. Units stand in every field's name. Not
 * here: any decision.
 */
@NullMarked
package feedwitness.publish;

import org.jspecify.annotations.NullMarked;
