/** Calls over a packet network. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench.voice;
