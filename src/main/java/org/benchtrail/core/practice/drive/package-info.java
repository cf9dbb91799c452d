/** A workstation's drive with its cable, its plug and the backup. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.practice.drive;
