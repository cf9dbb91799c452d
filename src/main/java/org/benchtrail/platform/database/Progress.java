package org.benchtrail.platform.database;

/** Hears, as plain sentences, what the start of the database is doing, so that a console can show it. */
@FunctionalInterface
public interface Progress {
    void tell(String sentence);
}
