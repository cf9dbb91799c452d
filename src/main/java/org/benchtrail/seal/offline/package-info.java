/** The verifier of what was exported: no server, no database, no network. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.seal.offline;
