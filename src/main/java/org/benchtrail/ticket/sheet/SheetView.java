package org.benchtrail.ticket.sheet;

import java.util.List;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.SealedUpTo;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.attachment.CameraNotes;
import org.benchtrail.ticket.coach.CoachView;
import org.benchtrail.ticket.desk.DeskView;
import org.benchtrail.ticket.desk.JudgingView;
import org.benchtrail.ticket.document.DocumentView;
import org.benchtrail.ticket.forecast.ChancesView;
import org.benchtrail.ticket.forecast.ForecastView;
import org.benchtrail.ticket.identify.EvidenceView;
import org.benchtrail.ticket.identify.IdentifyView;
import org.benchtrail.ticket.identify.ReadingChoices;
import org.benchtrail.ticket.plan.PlanView;
import org.benchtrail.ticket.record.RecordView;
import org.benchtrail.ticket.test.TestView;
import org.benchtrail.ticket.theorize.QuestionsView;
import org.benchtrail.ticket.theorize.RankingView;
import org.benchtrail.ticket.theorize.TheorizeView;
import org.benchtrail.ticket.theorize.TheoryView;
import org.benchtrail.ticket.verify.VerifyView;
import org.jspecify.annotations.Nullable;

/**
 * The job sheet as its page shows it to one viewer. Of the six views of a step, only that of the step is there at which an open
 * ticket stands.
 *
 * @param base of the addresses of its forms and entries
 * @param live whether it is of a ticket, and not of a practice job: only then is it watched, drafted and moved
 * @param viewer account
 * @param version number of the last entry
 * @param fault why nothing can be recorded; empty if the record holds
 * @param mending whether the viewer may see to it
 * @param holes what is lost of the trail, after which the ticket went on
 * @param sealed how far the trail is sealed, and who has seen it; empty of a practice job
 * @param record of a ticket that has ended, shown in place of the steps; null while it is open
 * @param earlier the rounds before this one
 * @param ranking of the causes, as long as it is of use: until a theory is supported
 * @param questions that the causes are told apart by, for as long
 * @param forecast what the viewer is to say first, or may skip for a trainee; null if nothing is
 * @param chances what the viewer may forecast besides; null if nothing
 * @param coach what is said beside the requirements of the step
 */
public record SheetView(
        String number,
        String base,
        boolean live,
        int version,
        String viewer,
        boolean open,
        String fault,
        boolean mending,
        List<String> holes,
        String lastEntry,
        String sealed,
        HeadView head,
        @Nullable RecordView record,
        Offered offered,
        List<StepRow> rows,
        List<EarlierRound> earlier,
        GateView gate,
        EvidenceView evidence,
        ReadingChoices reading,
        List<TheoryView> theories,
        @Nullable RankingView ranking,
        @Nullable QuestionsView questions,
        @Nullable ForecastView forecast,
        @Nullable ChancesView chances,
        CoachView coach,
        Steps step,
        DeskView desk,
        JudgingView judging) {

    /**
     * The view of the step; the others are null, and all of them if the ticket has ended.
     *
     * @param drawn the forms below the step that no template shows
     */
    public record Steps(
            @Nullable IdentifyView identify,
            @Nullable TheorizeView theorize,
            @Nullable TestView test,
            @Nullable PlanView plan,
            @Nullable VerifyView verify,
            @Nullable DocumentView document,
            List<DrawnView> drawn) {}

    /** So many bytes of a picture hold what its camera noted; the browser sends them beside one that it made smaller. */
    public int pictureHead() {
        return CameraNotes.HEAD;
    }

    public static SheetView of(SheetQueries.Contents contents) {
        TicketQueries.Whole ticket = contents.traced().ticket();
        Viewing viewing = contents.viewing();
        JobSheet sheet = viewing.sheet();
        boolean open = sheet.course().isOpen();
        Offered offered = ticket.fault().isEmpty() ? Offered.of(viewing) : Offered.NOTHING;
        List<Requirement.Status> gate = contents.gate();
        boolean seeking = open && sheet.step().isBefore(Step.PLAN);
        return new SheetView(
                ticket.number().toString(),
                contents.base(),
                contents.base().equals(SheetQueries.base(ticket.number())),
                sheet.entries(),
                viewing.viewer().account(),
                open,
                ticket.fault(),
                Permissions.allow(Permission.MEND_TRAILS, viewing.viewer()),
                sheet.holes().stream().map(Hole::sentence).toList(),
                lastEntry(viewing),
                sealed(contents),
                HeadView.of(ticket, contents.deviceAt(), viewing),
                open ? null : RecordView.of(contents.traced(), viewing),
                offered,
                StepRow.all(viewing),
                EarlierRound.all(viewing),
                GateView.of(gate, sheet.step(), offered.waiving(), offered.working()),
                EvidenceView.of(viewing),
                readings(contents),
                TheoryView.all(sheet),
                seeking ? contents.ranking() : null,
                seeking ? contents.questions() : null,
                contents.forecast(),
                chances(contents),
                contents.coach(),
                steps(contents, gate),
                DeskView.of(viewing, contents.workers()),
                JudgingView.of(viewing));
    }

    /** On tickets alone: what is true of a practice device answers there what was expected. */
    private static @Nullable ChancesView chances(SheetQueries.Contents contents) {
        boolean live = contents.base()
                .equals(SheetQueries.base(contents.traced().ticket().number()));
        return live
                ? ChancesView.of(contents.viewing(), contents.context().category())
                        .orElse(null)
                : null;
    }

    private static Steps steps(SheetQueries.Contents contents, List<Requirement.Status> gate) {
        Viewing viewing = contents.viewing();
        JobSheet sheet = viewing.sheet();
        RankingView ranking = contents.ranking();
        Step now = sheet.course().isOpen() ? sheet.step() : null;
        return new Steps(
                now == Step.IDENTIFY ? identify(contents) : null,
                now == Step.THEORIZE ? TheorizeView.of(sheet, ranking) : null,
                now == Step.TEST ? TestView.of(viewing, contents.questions()) : null,
                now == Step.PLAN ? PlanView.of(viewing, ranking) : null,
                now == Step.VERIFY ? VerifyView.of(viewing, gate) : null,
                now == Step.DOCUMENT ? DocumentView.of(ranking, contents.known(), gate) : null,
                now == null ? List.of() : DrawnView.all(viewing));
    }

    private static IdentifyView identify(SheetQueries.Contents contents) {
        ForecastView forecast = contents.forecast();
        boolean veiled = forecast != null && forecast.own() && forecast.isEarly();
        return IdentifyView.of(contents.viewing(), contents.alike(), contents.known(), veiled);
    }

    private static ReadingChoices readings(SheetQueries.Contents contents) {
        QuestionsView questions = contents.questions();
        return ReadingChoices.of(
                questions == null ? List.of() : questions.measurable(),
                contents.context().limits());
    }

    private static String sealed(SheetQueries.Contents contents) {
        SealedUpTo sealed = contents.sealed();
        Viewing viewing = contents.viewing();
        return sealed == null ? "" : sealed.sentence(viewing.sheet().entries(), viewing.zone());
    }

    private static String lastEntry(Viewing viewing) {
        List<? extends StandingFact<?>> facts = viewing.sheet().facts();
        EntryLine last = viewing.line(facts.get(facts.size() - 1));
        return last.kind() + ", " + last.stamp();
    }
}
