/** Benchtrail: the bench where a fault is found, the trail that proves how. */
@org.jspecify.annotations.NullMarked
package org.benchtrail;
