/** Time-stamps of heads by an authority (RFC 3161): the one room in which its formats are written and read. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.seal.timestamp;
