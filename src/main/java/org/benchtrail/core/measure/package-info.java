/** Quantities with units, readings with uncertainty, limits, verdicts, series. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.measure;
