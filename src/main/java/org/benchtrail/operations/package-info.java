/** What the person who runs the server does with its data as a whole: migrate, back up, restore. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.operations;
