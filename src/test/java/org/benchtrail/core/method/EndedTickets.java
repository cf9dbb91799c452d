package org.benchtrail.core.method;

import java.time.Duration;
import java.util.List;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;

/** Tickets that have ended, for what looks at them afterwards. */
public final class EndedTickets {
    private EndedTickets() {}

    /** A sheet with the trail that tells it. */
    public record Told(JobSheet sheet, List<Entry> trail, Policy policy) {
        private static Told of(TicketFixture desk) {
            return new Told(desk.sheet(), desk.trail(), desk.policy());
        }
    }

    /** By Ines alone; nothing conditional asks anything. */
    public static Told closed() {
        return Told.of(Sheets.closed());
    }

    /** At Test, by Sue. */
    public static Told cancelled() {
        return Told.of(Sheets.cancelled());
    }

    /** Worked by Tom, a trainee; approved by Sue, signed by Marek as mentor. */
    public static Told demanding() {
        TicketFixture desk = Sheets.demandingAtStep(Step.DOCUMENT);
        Sheets.meetAll(desk);
        desk.assignee().records(new Closed());
        return Told.of(desk);
    }

    /** Opened by Ines, handed on to Ole by Boris before anything was done, and closed by him. */
    public static Told handedOn() {
        TicketFixture desk = Sheets.plain();
        desk.as(Sheets.BORIS).records(new HandedOver("ole", Sheets.OLE.roles(), ""));
        Sheets.bring(desk, Step.DOCUMENT);
        Sheets.meetAll(desk);
        desk.assignee().records(new Closed());
        return Told.of(desk);
    }

    /** Closed by Ines; an hour later opened again by Sue and handed to Ole by Boris, who then works on it or does not. */
    public static Told handedOverAfterwards(boolean worked) {
        TicketFixture desk = Sheets.closed();
        desk.passes(Duration.ofHours(1));
        desk.as(Sheets.SUE).records(new Reopened("It is hot again"));
        desk.as(Sheets.BORIS).records(new HandedOver("ole", Sheets.OLE.roles(), ""));
        if (worked) {
            desk.as(Sheets.OLE).records(new ScopeRecorded(Scope.ONE, ""));
        }
        return Told.of(desk);
    }

    /** Not ended: Sue has waived the evidence. */
    public static Told waived() {
        TicketFixture desk = Sheets.plain();
        desk.as(Sheets.SUE).records(new Waived("logs-reviewed", "None are kept"));
        return Told.of(desk);
    }

    /** Not ended: smoke was found, and cleared by Marek. */
    public static Told hazard() {
        TicketFixture desk = Sheets.plain();
        desk.assignee().records(Sheets.hazard(Hazard.values()[0]));
        desk.as(Sheets.MAREK).forces(Sheets.cleared());
        return Told.of(desk);
    }

    /** Not ended: a drive is failing. */
    public static Told drive() {
        TicketFixture desk = Sheets.plain();
        desk.assignee().records(Sheets.drive(true));
        return Told.of(desk);
    }

    /** Not ended: at Verify, a temperature of 96 °C that was outside is not measured since the repair. */
    public static Told verifying() {
        return Told.of(outside());
    }

    /** The same, measured again at the same point. */
    public static Told measuredAgain(String value) {
        TicketFixture desk = outside();
        desk.assignee().records(Sheets.temperature(value, "memory"));
        return Told.of(desk);
    }

    /** The same, closed; with what was recorded after it in the end. */
    public static Told measuredAndClosed(Fact... afterwards) {
        TicketFixture desk = outside();
        desk.assignee().records(Sheets.temperature("61", "memory"));
        Sheets.bring(desk, Step.DOCUMENT);
        Sheets.meetAll(desk);
        desk.assignee().records(new Closed());
        for (Fact fact : afterwards) {
            desk.assignee().records(fact);
        }
        return Told.of(desk);
    }

    private static TicketFixture outside() {
        TicketFixture desk = Sheets.plain();
        desk.assignee().records(Sheets.temperature("96", "memory"));
        return Sheets.bring(desk, Step.VERIFY);
    }
}
