package org.benchtrail.ticket.entry;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.ticket.FactText;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Times;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.Verification;

/** The whole trail of a ticket, and whether it holds. */
public record TrailView(String number, String title, Verification verification, List<Line> lines) {

    public record Line(int entry, String when, String who, String kind, List<FactText.Part> parts, String hash) {}

    static TrailView of(TicketNumber number, TicketQueries.Verified verified, ZoneId zone, Map<String, String> names) {
        return new TrailView(
                number.toString(),
                verified.line().title(),
                verified.verification(),
                verified.trail().stream().map(e -> line(e, zone, names)).toList());
    }

    private static Line line(TrailEntry e, ZoneId zone, Map<String, String> names) {
        return new Line(
                e.entry(),
                Times.text(e.at(), zone),
                names.getOrDefault(e.actor(), e.actor()),
                e.kind().replace('-', ' '),
                FactText.parts(e.read().fact(), zone),
                e.hash());
    }
}
