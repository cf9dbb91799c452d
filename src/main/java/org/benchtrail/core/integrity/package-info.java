/** Hash chain, check digits: what makes a record tamper-evident. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.integrity;
