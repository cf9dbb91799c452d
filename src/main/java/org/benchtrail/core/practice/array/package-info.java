/** A set of drives with single parity: whether it is whole, how long it takes, what a rebuild risks. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.practice.array;
