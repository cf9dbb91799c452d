/** A request that is sent again under its key is answered what it was answered before, and done once. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.repeat;
