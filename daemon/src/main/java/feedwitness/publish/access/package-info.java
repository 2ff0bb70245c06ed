/**
 * Who may use the page from where: the access key, pairing by short-lived codes, paired devices and
 * their roles, throttled guessing, the audit trail, and the certificate of the page. Knows nothing
 * of addresses of the interface or of JSON. Secrets never leave by {@code toString}, log or record:
 * of a token only its SHA-256 is kept. Thread rule: everything here may be called from any web
 * thread.
 */
@NullMarked
package feedwitness.publish.access;

import org.jspecify.annotations.NullMarked;
