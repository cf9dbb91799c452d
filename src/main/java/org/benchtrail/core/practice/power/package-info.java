/** A UPS with what hangs on it, and a small network behind it. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.practice.power;
