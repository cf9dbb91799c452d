/** The servers that run on one database. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.nodes;
