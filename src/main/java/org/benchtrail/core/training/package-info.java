/**
 * Between practice devices and the catalogue: which finding an act answers, which act repairs a cause, jobs played by machine, and
 * what a debrief says. The devices themselves know nothing of it.
 */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.training;
