/** The supervisor's audit: lots, reviews, and what they say of a period. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.audit;
