package org.benchtrail.ticket.api;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Lessening;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.ticket.SealedUpTo;
import org.benchtrail.ticket.TicketQueries;
import org.jspecify.annotations.Nullable;

/**
 * A job sheet as the API tells it.
 *
 * @param version number of the last entry; send it back as {@code If-Match}
 * @param gate what must be true before the step is left, and how it stands
 * @param checklist the texts by which the functions are answered
 * @param lessenings what is owed on although a correction took it away, until somebody independent agrees
 * @param facts as they stand, corrections applied
 * @param sealed the last entry that a signed head of the log holds; 0 if none
 * @param witnessed who else has seen that head, or a later one
 * @param holes what is lost of the trail, after which it was agreed to go on: no fact of it counts
 */
public record SheetJson(
        String number,
        int version,
        CourseJson course,
        String requester,
        String contact,
        List<GateLine> gate,
        List<String> checklist,
        List<LesseningLine> lessenings,
        List<FactLine> facts,
        int sealed,
        WitnessedLine witnessed,
        List<HoleLine> holes) {

    /**
     * Witnesses, who are no part of the shop.
     *
     * @param by how many have signed
     * @param of how many are asked
     * @param at when the last of them did; null if none has, and then the shop alone has signed
     */
    public record WitnessedLine(int by, int of, @Nullable Instant at) {}

    /**
     * Entries that are lost.
     *
     * @param incident place in the stream of incidents, of who agreed
     */
    public record HoleLine(int first, int last, long incident) {
        static HoleLine of(Hole hole) {
            return new HoleLine(hole.first(), hole.last(), hole.incident());
        }
    }

    /**
     * A lessening that waits.
     *
     * @param entry that was corrected
     * @param correction entry number to agree to
     * @param owed the fact as it was before
     */
    public record LesseningLine(int entry, int correction, String by, Fact owed) {
        static LesseningLine of(Lessening waiting) {
            return new LesseningLine(
                    waiting.owed().entry(),
                    waiting.by().entry(),
                    waiting.by().person(),
                    waiting.owed().fact());
        }
    }

    public record GateLine(String code, String title, Requirement.State state, String sentence, boolean waivable) {}

    /**
     * A fact as it stands.
     *
     * @param by account, or {@code server} where the server itself speaks
     * @param behalf at whose act the server spoke; null where a person speaks
     * @param channel the door by which it came in; null in entries from before this was kept
     * @param request what the entries of one request share
     */
    public record FactLine(
            int entry,
            Instant at,
            String by,
            Set<Role> roles,
            @Nullable String behalf,
            @Nullable Channel channel,
            String request,
            int round,
            Step during,
            boolean late,
            @Nullable Integer correctedBy,
            Fact fact) {}

    static SheetJson of(TicketQueries.Whole ticket, SealedUpTo sealed, List<Requirement.Status> gate) {
        return new SheetJson(
                ticket.number().toString(),
                ticket.sheet().entries(),
                CourseJson.of(ticket.sheet().course()),
                ticket.requester(),
                ticket.contact(),
                gate.stream().map(SheetJson::line).toList(),
                ticket.sheet().checkedAs().functions(),
                ticket.sheet().lessenings().stream().map(LesseningLine::of).toList(),
                facts(ticket.sheet()),
                sealed.entry(),
                new WitnessedLine(sealed.signed(), sealed.asked(), sealed.at()),
                ticket.sheet().holes().stream().map(HoleLine::of).toList());
    }

    private static GateLine line(Requirement.Status s) {
        return new GateLine(
                s.requirement().code(),
                s.requirement().title(),
                s.state(),
                s.sentence(),
                s.requirement().waivable());
    }

    private static List<FactLine> facts(JobSheet sheet) {
        return sheet.facts().stream().map(SheetJson::line).toList();
    }

    private static FactLine line(StandingFact<?> n) {
        return new FactLine(
                n.entry(),
                n.stamp().at(),
                n.stamp().by(),
                n.stamp().roles(),
                n.stamp().behalf(),
                n.stamp().channel(),
                n.stamp().request(),
                n.round(),
                n.during(),
                n.late(),
                n.corrected() == null ? null : n.corrected().entry(),
                n.fact());
    }
}
