/** The event log of a month as a file: what was done on each ticket and when, without a word that somebody typed. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.exports;
