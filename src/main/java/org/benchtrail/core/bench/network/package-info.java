/** Wired networks: addresses, cable, power over it, paths. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.bench.network;
