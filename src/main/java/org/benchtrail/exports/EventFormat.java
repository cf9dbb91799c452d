package org.benchtrail.exports;

import java.io.IOException;
import java.io.OutputStream;

/** A form in which an event log is written: its beginning, tickets one after the other, its end. */
interface EventFormat {
    /** @param about the file and where its own words are explained */
    void begin(About about, OutputStream file) throws IOException;

    void ticket(TicketEvents ticket, OutputStream file) throws IOException;

    void end(OutputStream file) throws IOException;

    /** Whether each event comes with the proof that it is in the log. */
    default boolean proves() {
        return false;
    }

    /**
     * @param month such as 2026-11
     * @param address of the file that explains the keys of our own
     * @param head newest head of the log with its signatures; empty if there is none yet
     */
    record About(String month, String address, String head) {}
}
