/** Tests of the packaged server as a process of its own: killed, started again, given wrong words. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.packaged;
