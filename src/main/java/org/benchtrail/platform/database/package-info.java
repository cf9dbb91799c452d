/**
 * The PostgreSQL that Benchtrail brings along: unpacked, checked, created, started and stopped beside its data.
 *
 * <p>Pure Java without the server's framework, because it runs before the server starts. {@link
 * org.benchtrail.platform.database.EmbeddedDatabase} is the only way in.
 */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.database;
