package org.benchtrail.ticket.alarm;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.ticket.Times;
import org.benchtrail.trail.Alarms;

/**
 * The alarms.
 *
 * @param standing numbers of the tickets that did not hold when last looked at
 * @param lines every finding, newest first
 */
public record AlarmView(List<String> standing, List<Line> lines) {

    /**
     * One finding.
     *
     * @param detail what stands at the two ends; empty where it holds
     */
    public record Line(String number, String when, boolean holds, String sentence, String detail, String seenBy) {}

    static AlarmView of(List<Integer> standing, List<Alarms.Line> lines, Map<String, String> names, ZoneId zone) {
        return new AlarmView(
                standing.stream().map(AlarmView::number).toList(),
                lines.stream()
                        .map(l -> new Line(
                                number(l.ticket()),
                                Times.text(l.at(), zone),
                                l.holds(),
                                l.sentence(),
                                l.detail(),
                                names.getOrDefault(l.seenBy(), l.seenBy())))
                        .toList());
    }

    private static String number(int serial) {
        return new TicketNumber(serial).toString();
    }
}
