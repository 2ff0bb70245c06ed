/** Holds what the service publishes against readers that were not written here. */
@NullMarked
package feedwitness.outside;

import org.jspecify.annotations.NullMarked;
