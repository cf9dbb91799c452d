package org.benchtrail.browser;

import org.benchtrail.demo.Scenarios;

/** A simple ticket from report to closure in Chromium; what happens to the servers meanwhile happens between its halves. */
public final class TicketInTwoHalves implements AutoCloseable {
    private final Person ines;

    /** Somebody of the demo signs in. */
    public TicketInTwoHalves(String server) {
        ines = new Person(server).signIn("ines", Scenarios.DEMO_PASSWORD);
    }

    /** Until the symptom is typed, and nothing of the step is sent. */
    public void first() {
        ines.go("/new-ticket");
        Steps.newTicket(ines, "Screen stays black", "DISPLAY");
        ines.fill("symptom.observable", "No picture, power light blinks");
        Steps.answers(ines, false);
    }

    /** From the page that {@link #first} left open. */
    public void second() {
        ines.press("Save and go to Theorize");
        Steps.fromTheories(ines);
    }

    @Override
    public void close() {
        ines.close();
    }
}
