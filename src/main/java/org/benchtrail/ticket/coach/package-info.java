/** The coach on the job sheet: its texts, and what of them stands beside a requirement. */
@NullMarked
package org.benchtrail.ticket.coach;

import org.jspecify.annotations.NullMarked;
