/**
 * Names what must be remembered, as ports that {@code store} fulfils. No database words here. A
 * mark published as durable is a promise: nothing at or below it is ever lost. Not here: how it is
 * kept, how it is shown.
 */
@NullMarked
package feedwitness.ledger;

import org.jspecify.annotations.NullMarked;
