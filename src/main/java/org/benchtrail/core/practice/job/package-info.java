/** Practice jobs: what can be done with each simulated device, what it answers, and what is true of it by its seed. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.practice.job;
