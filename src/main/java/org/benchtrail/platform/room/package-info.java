/** How much room the disk has left, and who is told. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.room;
