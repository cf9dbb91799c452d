/** What a trainee says before causes are shown: the form, and the page in place of what is not shown yet. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.forecast;
