/** SQL that stands in resources of its own, its parameters and its rows by their names. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.sql;
