/** The append-only record of every act on a ticket: append, read, verify. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.trail;
