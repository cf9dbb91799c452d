/** A desktop that may overheat. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.practice.desktop;
