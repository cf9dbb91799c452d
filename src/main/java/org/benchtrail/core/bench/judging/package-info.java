/** Readings held against limits, before against after, how long to watch and how many to look at. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench.judging;
