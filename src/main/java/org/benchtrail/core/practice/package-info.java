/**
 * Practice jobs: devices that are simulated by the equations of physics, the time of such a job, and the chance in it. Knows
 * nothing of the cause catalogue: what is true of a device does not come from what is believed about it.
 */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.practice;
