/** What the forms of the job sheet are made of: groups of fields, each of which becomes a fact. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.form;
