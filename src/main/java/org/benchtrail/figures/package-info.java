/** Figures over many tickets, by time, place and kind of trouble, never by person: as a page, as files, and down to the tickets. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.figures;
