/** Supplies, mains, uninterruptible supplies and batteries. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench.power;
