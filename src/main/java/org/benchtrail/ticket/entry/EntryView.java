package org.benchtrail.ticket.entry;

import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.FactText;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.desk.Remarks;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/**
 * One entry of the trail.
 *
 * @param version of the sheet
 * @param parts as they were recorded
 * @param origin how it came to be made; empty in entries from before this was kept
 * @param standing the fact as it stands now; what was recorded if it was struck out
 * @param remarks that were put on it
 * @param remarkable whether the viewer may put one
 * @param correctable whether the viewer may put it right
 * @param calculation address that calculates it again; empty if it is none
 */
public record EntryView(
        String number,
        int entry,
        int version,
        String kind,
        List<FactText.Part> parts,
        String stamp,
        List<FactText.Part> origin,
        String hash,
        Fact standing,
        List<Remarks.Remark> remarks,
        boolean remarkable,
        boolean correctable,
        String calculation) {

    /** A component of the fact as a field: a text, a yes-or-no, or one of some options. */
    public record Component(String name, String label, boolean yesNo, List<Option> options) {}

    static EntryView of(
            TicketQueries.Whole ticket, TrailEntry stored, Actor viewer, ZoneId zone, Map<String, String> names) {
        Entry read = stored.read();
        Fact recorded = read.fact();
        Optional<Fact> standing = ticket.sheet().facts().stream()
                .filter(n -> n.entry() == stored.entry())
                .<Fact>map(StandingFact::fact)
                .findFirst();
        Fact fact = standing.orElse(recorded);
        return new EntryView(
                ticket.number().toString(),
                stored.entry(),
                ticket.sheet().entries(),
                stored.kind().replace('-', ' '),
                FactText.parts(recorded, zone),
                stamp(read.stamp(), zone, names),
                origin(read.stamp().origin()),
                stored.hash(),
                fact,
                Remarks.of(ticket.sheet(), s -> stamp(s, zone, names)).of(stored.entry()),
                ticket.sheet().course().isOpen() && isReviewer(viewer, ticket.sheet()),
                standing.isPresent() && ticket.sheet().course().isOpen() && isCorrectable(fact) && viewer.works(),
                fact instanceof BenchResultAttached attached ? BenchRun.again(attached) : "");
    }

    private static String stamp(Stamp stamp, ZoneId zone, Map<String, String> names) {
        return Viewing.who(stamp, names) + ", " + Times.text(stamp.at(), zone);
    }

    private static List<FactText.Part> origin(@Nullable Origin origin) {
        return origin == null
                ? List.of()
                : List.of(
                        new FactText.Part("came in by", Option.words(origin.channel())),
                        new FactText.Part("request", origin.request()),
                        new FactText.Part("policy", origin.policy()));
    }

    private static boolean isReviewer(Actor viewer, JobSheet sheet) {
        return (viewer.is(Role.MENTOR) || viewer.is(Role.SUPERVISOR)) && !sheet.isHand(viewer.account());
    }

    /** The report that opened the ticket is left to the API. */
    private static boolean isCorrectable(Fact fact) {
        return !(fact instanceof Opened) && fact.correctable() != Correctable.NEVER;
    }

    /** The fields that put it right. */
    public List<Component> components() {
        return Stream.of(standing.getClass().getRecordComponents())
                .map(c -> new Component(
                        CorrectionForms.NEW + "." + c.getName(),
                        c.getName().replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT),
                        c.getType() == boolean.class,
                        c.getName().equals("cautions") ? Option.of(Caution.class) : List.of()))
                .toList();
    }
}
