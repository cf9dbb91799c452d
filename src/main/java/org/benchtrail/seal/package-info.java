/**
 * The log that outsiders can check: what is queued by the database is numbered, signed, published, and kept in a folder; the verifier
 * and the witness, which need no server, in packages of their own.
 */
@org.jspecify.annotations.NullMarked
package org.benchtrail.seal;
