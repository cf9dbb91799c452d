/** What every feature stands on: what kind a request is, local paths, time, options. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform;
