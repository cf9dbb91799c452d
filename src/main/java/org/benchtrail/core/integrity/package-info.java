/** What makes a record tamper-evident: the chain of a ticket, and the tree, the signed heads and the files of the log. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.integrity;
