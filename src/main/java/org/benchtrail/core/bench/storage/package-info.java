/** Drives, arrays, backups. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench.storage;
