/** What happens while the database does not answer: what it is told by, what people and programs are told, and its one line in the log. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.outage;
