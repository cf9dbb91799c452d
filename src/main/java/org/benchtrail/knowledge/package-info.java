/** The cause catalogue and the cases behind it. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.knowledge;
