/** Intervals and tests that more than one trade needs. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.statistics;
