/** Name and contact of who reported a ticket leave the database, once two supervisors agree to it. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.ticket.erasure;
