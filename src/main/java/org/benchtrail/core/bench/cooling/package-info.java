/** Heat, fans and rooms. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench.cooling;
