/** A witness for logs such as ours (C2SP tlog-witness): keeps the newest head it has seen of each, and signs what goes on from it. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.seal.witness;
