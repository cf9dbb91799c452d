/** What a closed ticket teaches the cause catalogue. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.learning;
