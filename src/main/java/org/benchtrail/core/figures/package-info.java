/** Figures over many tickets: how long steps take, how often a time is kept, and from how many on each may be shown. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.figures;
