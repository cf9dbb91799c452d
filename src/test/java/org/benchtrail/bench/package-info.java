/** The bench as pages and for programs. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.bench;
