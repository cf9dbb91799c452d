/** The calculations of the trade: typed input, result, and the working shown. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench;
