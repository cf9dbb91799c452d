/** The bench: its calculations as pages and for programs, generic over the input record of each. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.bench;
