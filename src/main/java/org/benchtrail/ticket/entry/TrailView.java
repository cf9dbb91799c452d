package org.benchtrail.ticket.entry;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.FactText;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.Verification;

/** The whole trail of a ticket, and whether it holds. */
public record TrailView(String number, String title, Verification verification, List<Line> lines) {

    private static final List<FactText.Part> UNREADABLE = List.of(new FactText.Part("content", "it cannot be read"));

    private static final List<FactText.Part> VEILED =
            List.of(new FactText.Part("content", "veiled until your forecast"));

    /**
     * @param borrowed whether the time is the one of the entry before, because the server's clock was behind it
     * @param channel in words; empty in entries from before it was kept
     */
    public record Line(
            int entry,
            String when,
            boolean borrowed,
            String who,
            String channel,
            String kind,
            List<FactText.Part> parts,
            String hash) {}

    static TrailView of(TicketNumber number, TicketQueries.Verified verified, ZoneId zone, Map<String, String> names) {
        return new TrailView(
                number.toString(),
                verified.line().title(),
                verified.verification(),
                lines(verified.trail(), zone, names));
    }

    private static List<Line> lines(List<TrailEntry> trail, ZoneId zone, Map<String, String> names) {
        List<Line> lines = new ArrayList<>();
        Stamp before = null;
        boolean borrowed = false;
        for (TrailEntry entry : trail) {
            Optional<Entry> read = entry.readable();
            Stamp stamp = read.map(Entry::stamp).orElse(null);
            borrowed = stamp != null
                    && before != null
                    && (stamp.borrowsTime(before) || (borrowed && stamp.at().equals(before.at())));
            lines.add(line(entry, read, borrowed, zone, names));
            before = stamp;
        }
        return lines;
    }

    private static Line line(
            TrailEntry e, Optional<Entry> read, boolean borrowed, ZoneId zone, Map<String, String> names) {
        Optional<Stamp> stamp = read.map(Entry::stamp);
        return new Line(
                e.entry(),
                Times.text(e.at(), zone),
                borrowed,
                stamp.map(s -> Viewing.who(s, names)).orElse(e.actor()),
                stamp.map(Stamp::channel).map(Option::words).orElse(""),
                e.kind().replace('-', ' '),
                read.map(entry -> FactText.parts(entry.fact(), zone)).orElse(e.isVeiled() ? VEILED : UNREADABLE),
                e.hash());
    }
}
