package org.benchtrail.ticket.record;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.ticket.FactText;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.document.RecordSummary;
import org.benchtrail.ticket.identify.MarkedPicture;
import org.benchtrail.ticket.identify.ReadingSeries;
import org.benchtrail.ticket.theorize.TheoryView;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/**
 * A ticket from its report to its end.
 *
 * @param entries where its entries are, before their numbers; empty where nothing leads there
 * @param head what the ticket is about, in pairs
 * @param summary of a closed ticket; null of any other
 * @param made when this was written
 */
public record RecordView(
        String number,
        String title,
        String entries,
        List<FactText.Part> head,
        @Nullable RecordSummary summary,
        List<StepPart> steps,
        TrailHead trail,
        String made) {

    /** What stands at the foot of every page of the paper. */
    public String foot() {
        return "Ticket " + number + ", made " + made;
    }

    /**
     * What one step holds.
     *
     * @param signed who left the step last, and when; empty while nobody has
     * @param theories with how each stands; of Theorize alone
     * @param series that ended at this step, drawn
     */
    public record StepPart(
            int place,
            String title,
            String signed,
            List<TheoryView> theories,
            List<RecordLine.Reading> readings,
            List<ReadingSeries> series,
            List<RecordLine.Check> checks,
            List<RecordLine> lines) {}

    /**
     * Where the trail stands.
     *
     * @param fault what does not hold; empty if all does
     * @param holes what is lost, after which the ticket went on
     */
    public record TrailHead(int entries, String fault, List<String> holes, String last, String hash) {}

    /** Accounts that the record names: also of who recorded what no longer stands. */
    public static Set<String> accounts(TicketQueries.Traced traced) {
        Set<String> accounts = new HashSet<>(Viewing.accounts(traced.ticket().sheet()));
        traced.trail().stream()
                .flatMap(e -> e.readable().stream())
                .forEach(e -> accounts.add(e.stamp().person()));
        return accounts;
    }

    /** On a screen. */
    public static RecordView of(TicketQueries.Traced traced, Viewing viewing) {
        return of(traced, viewing, picture -> picture);
    }

    /** As {@link #of(TicketQueries.Traced, Viewing)}, but that nothing on it leads to pages that name people; pictures open as files. */
    public static RecordView closed(TicketQueries.Traced traced, Viewing viewing) {
        return of(traced, viewing, MarkedPicture::alone, "");
    }

    /** @param pictures each as it is shown where the record is read; null leaves it out */
    static RecordView of(
            TicketQueries.Traced traced, Viewing viewing, Function<MarkedPicture, @Nullable MarkedPicture> pictures) {
        return of(traced, viewing, pictures, "/tickets/" + traced.ticket().number() + "/entries/");
    }

    private static RecordView of(
            TicketQueries.Traced traced,
            Viewing viewing,
            Function<MarkedPicture, @Nullable MarkedPicture> pictures,
            String entries) {
        JobSheet sheet = viewing.sheet();
        RecordLines lines = new RecordLines(traced.trail(), viewing, pictures);
        return new RecordView(
                traced.ticket().number().toString(),
                sheet.opened().title(),
                entries,
                head(traced.ticket(), viewing),
                RecordSummary.of(viewing),
                List.of(Step.values()).stream()
                        .map(step -> part(step, lines, viewing))
                        .toList(),
                trail(traced, viewing),
                viewing.time(viewing.now()));
    }

    private static List<FactText.Part> head(TicketQueries.Whole ticket, Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        return List.of(
                new FactText.Part("Device", sheet.opened().device()),
                new FactText.Part("Where", sheet.opened().place()),
                new FactText.Part("For", ticket.requester() + ", " + ticket.contact()),
                new FactText.Part("Opened", viewing.time(ticket.line().opened())),
                new FactText.Part("State", state(sheet, viewing)),
                new FactText.Part("Rounds", String.valueOf(sheet.round())));
    }

    private static String state(JobSheet sheet, Viewing viewing) {
        Standing standing = sheet.course().standing();
        if (standing == Standing.CLOSED && sheet.course().closed() != null) {
            return "closed " + viewing.time(sheet.course().closed());
        }
        return standing == Standing.OPEN ? "open, at " + sheet.step().title() : "cancelled";
    }

    private static StepPart part(Step step, RecordLines lines, Viewing viewing) {
        Optional<StandingFact<MoveFact>> leaving = viewing.sheet()
                .latest(
                        MoveFact.class,
                        m -> m.during() == step && m.fact().move().gated());
        return new StepPart(
                step.place(),
                step.title(),
                leaving.map(viewing::stamp).orElse(""),
                step == Step.THEORIZE ? TheoryView.all(viewing.sheet()) : List.of(),
                lines.readings(step),
                lines.series(step),
                lines.checks(step),
                lines.others(step));
    }

    private static TrailHead trail(TicketQueries.Traced traced, Viewing viewing) {
        TrailEntry last = traced.trail().get(traced.trail().size() - 1);
        String who = last.readable()
                .map(e -> Viewing.who(e.stamp(), viewing.names()))
                .orElse(last.actor());
        return new TrailHead(
                traced.trail().size(),
                traced.ticket().fault(),
                viewing.sheet().holes().stream().map(Hole::sentence).toList(),
                last.kind().replace('-', ' ') + ", " + who + ", " + Times.text(last.at(), viewing.zone()),
                last.hash());
    }
}
