/**
 * The supervisor's audit: a plan, a frozen lot, a draw that nobody steers, reviews, and what they say of the whole lot. Pure; what is
 * kept of it are the acts.
 */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.audit;
