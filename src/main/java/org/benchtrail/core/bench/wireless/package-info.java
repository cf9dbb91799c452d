/** Radio links. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench.wireless;
