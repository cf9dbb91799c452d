/** Memory modules. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench.memory;
