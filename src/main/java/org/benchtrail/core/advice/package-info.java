/** Between the job sheet and what is computed from it: evidence for the ranking, results of the bench as facts. */
@NullMarked
package org.benchtrail.core.advice;

import org.jspecify.annotations.NullMarked;
