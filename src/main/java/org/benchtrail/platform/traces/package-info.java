/** What is told of each request to whoever collects traces; nothing unless the settings say where to. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.traces;
