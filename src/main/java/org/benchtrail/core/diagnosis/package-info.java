/** Causes ranked from evidence, the next best test, learning and calibration. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.diagnosis;
