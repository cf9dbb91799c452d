package org.benchtrail.ticket.today;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Hold;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.core.method.desk.WaitKind;
import org.benchtrail.core.method.verify.SoakTime;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.Viewing;
import org.jspecify.annotations.Nullable;

/**
 * One thing that waits: the evidence, and what the decision needs.
 *
 * @param version number of the last entry; 0 where only a link is shown
 * @param entry that made it wait
 * @param when who made it wait, and how long ago
 * @param away name of who is away and for whom the viewer stands in; empty if it waits for the viewer
 * @param evidence null where there are so many waits that this one is only named, or the record does not hold
 * @param given values that its form carries along, by the name of their field
 * @param held whether the ticket is on hold
 */
public record WaitView(
        WaitKind kind,
        String number,
        int version,
        int entry,
        String title,
        String device,
        String place,
        String when,
        String away,
        @Nullable WaitEvidence evidence,
        Map<String, String> given,
        boolean held) {

    /**
     * Without the evidence.
     *
     * @param names of accounts, by login
     */
    static WaitView named(WaitingLine line, String viewer, UnaryOperator<String> names, Instant now, ZoneId zone) {
        return new WaitView(
                line.kind(),
                line.number().toString(),
                0,
                line.entry(),
                line.title(),
                line.device(),
                line.place(),
                when(line, names.apply(line.asker()), now, zone),
                line.account() == null || line.account().equals(viewer) ? "" : names.apply(line.account()),
                null,
                Map.of(),
                false);
    }

    static WaitView whole(WaitingLine line, Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        WaitView named = named(line, viewing.viewer().account(), viewing::name, viewing.now(), viewing.zone());
        return new WaitView(
                named.kind,
                named.number,
                sheet.entries(),
                named.entry,
                named.title,
                named.device,
                named.place,
                named.when,
                named.away,
                WaitEvidence.of(line, viewing),
                given(line, viewing),
                sheet.course().hold() != null);
    }

    /** What tells the fields of one form on the page from those of another. */
    public String at() {
        return number + "-" + entry + "-";
    }

    /** What its fields hold before anybody types. */
    public FormValues typed() {
        return new FormValues();
    }

    public String value(String name) {
        return given.getOrDefault(name, "");
    }

    private static String when(WaitingLine line, String asker, Instant now, ZoneId zone) {
        String due = Times.text(line.due(), zone);
        return switch (line.kind()) {
            case SOAK -> "over since " + due;
            case FOLLOW_UP -> "look again " + due;
            default -> asker + ", " + due + ", " + Times.waits(line.due(), now);
        };
    }

    private static Map<String, String> given(WaitingLine line, Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        Hold hold = sheet.course().hold();
        return switch (line.kind()) {
            case WAIVER ->
                Map.of(
                        "requirement",
                        String.valueOf(sheet.at(line.entry(), Asked.class, "entry")
                                .fact()
                                .requirement()));
            case PRESENCE ->
                Map.of(
                        "about",
                        String.valueOf(sheet.at(line.entry(), PresenceSigned.class, "entry")
                                .fact()
                                .about()));
            case SOAK -> Map.of("minutes", Long.toString(ran(viewing)));
            case FOLLOW_UP ->
                hold == null ? Map.of() : Map.of("waitingFor", hold.waitingFor().name(), "note", hold.note());
            default -> Map.of();
        };
    }

    /** Minutes since the run was started that are not recorded yet. */
    private static long ran(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        return SoakTime.running(sheet)
                .map(started -> SoakTime.passed(started, viewing.now()) - SoakTime.told(sheet, started))
                .orElse(0L);
    }
}
