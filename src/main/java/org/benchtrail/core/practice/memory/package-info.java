/** Memory modules in their slots, whose errors come by chance at a rate that heat and speed raise. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.practice.memory;
