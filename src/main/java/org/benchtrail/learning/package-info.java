/** Closed tickets as cases: judged by a supervisor, learned from, withdrawn; and how well stated probabilities held. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.learning;
