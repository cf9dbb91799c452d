package org.benchtrail.ticket.sheet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.people.Directory;
import org.benchtrail.site.DeviceBook;
import org.benchtrail.site.DeviceView;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.KnownCauses;
import org.benchtrail.ticket.Resemblance;
import org.benchtrail.ticket.SealedUpTo;
import org.benchtrail.ticket.Seals;
import org.benchtrail.ticket.Sights;
import org.benchtrail.ticket.TicketLimits;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.coach.Coach;
import org.benchtrail.ticket.coach.CoachView;
import org.benchtrail.ticket.draft.Drafts;
import org.benchtrail.ticket.draft.TypedDraft;
import org.benchtrail.ticket.forecast.EarlierForecast;
import org.benchtrail.ticket.forecast.ForecastView;
import org.benchtrail.ticket.form.FormContext;
import org.benchtrail.ticket.record.RecordView;
import org.benchtrail.ticket.theorize.QuestionsView;
import org.benchtrail.ticket.theorize.RankingView;
import org.jspecify.annotations.Nullable;

/** All that the page of a job sheet shows, read in one transaction. */
@ApplicationScoped
public class SheetQueries {
    private final TicketQueries tickets;
    private final Resemblance resemblance;
    private final KnownCauses known;
    private final Directory people;
    private final Diagnoses diagnoses;
    private final TicketLimits limits;
    private final Sights sights;
    private final Coach coach;
    private final EarlierForecast earlier;
    private final Drafts drafts;
    private final SiteBook site;
    private final DeviceBook devices;
    private final Seals seals;
    private final Clock clock;

    SheetQueries(
            TicketQueries tickets,
            Resemblance resemblance,
            KnownCauses known,
            Directory people,
            Diagnoses diagnoses,
            TicketLimits limits,
            Sights sights,
            Coach coach,
            EarlierForecast earlier,
            Drafts drafts,
            SiteBook site,
            DeviceBook devices,
            Seals seals,
            Clock clock) {
        this.tickets = tickets;
        this.resemblance = resemblance;
        this.known = known;
        this.people = people;
        this.diagnoses = diagnoses;
        this.limits = limits;
        this.sights = sights;
        this.coach = coach;
        this.earlier = earlier;
        this.drafts = drafts;
        this.site = site;
        this.devices = devices;
        this.seals = seals;
        this.clock = clock;
    }

    /**
     * What was read.
     *
     * @param workers who can be handed a ticket
     * @param alike tickets; none once it was looked at them
     * @param known causes that fit; none where they are of no help
     * @param deviceAt page of the device; empty if the site does not know it
     * @param gate what must be true before the step is left
     * @param coach what is said beside the requirements of the step
     * @param context what the forms refer to beside the sheet
     * @param sealed how far the trail is sealed; null where it never is
     * @param base of the addresses of its forms
     * @param draft what the viewer typed and has not recorded yet
     * @param ranking null if the ticket has ended, the viewer forecasts first, or the catalogue has nothing for the category
     * @param questions of the category; null where the ticket has ended or there are none
     * @param forecast what the viewer is to say first, or may skip for a trainee; null if nothing is
     */
    public record Contents(
            TicketQueries.Traced traced,
            Viewing viewing,
            List<Actor> workers,
            List<TicketLine> alike,
            List<KnownCauses.Line> known,
            @Nullable RankingView ranking,
            @Nullable QuestionsView questions,
            @Nullable ForecastView forecast,
            FormContext context,
            String deviceAt,
            List<Requirement.Status> gate,
            CoachView coach,
            TypedDraft draft,
            @Nullable SealedUpTo sealed,
            String base) {}

    /** Where a ticket's sheet stands. */
    static String base(TicketNumber number) {
        return "/tickets/" + number;
    }

    @Transactional
    Contents contents(TicketNumber number, Actor viewer, ZoneId zone) {
        TicketQueries.Traced traced = tickets.traced(number, viewer);
        JobSheet sheet = traced.ticket().sheet();
        Instant now = clock.instant();
        SiteHistory decided = site.history();
        Viewing viewing = new Viewing(
                sheet,
                viewer,
                zone,
                now,
                decided.at(now).rules().policy(),
                decided.workingTime(),
                people.names(RecordView.accounts(traced)));
        List<TicketLine> alike = resemblance.tickets(number, sheet, viewer);
        boolean likeness = Resemblance.isOpenTo(sheet, viewer);
        List<KnownCauses.Line> causes = isSeekingKnown(sheet) && likeness ? known.of(sheet) : List.of();
        Optional<Diagnoses.Dated> dated = sheet.course().isOpen() ? diagnoses.of(sheet) : Optional.empty();
        boolean nothing = Resemblance.isAsked(sheet) && likeness && alike.isEmpty() && causes.isEmpty();
        List<Requirement.Status> gate = Resemblance.gate(sheet, viewing.policy(), viewing.now(), nothing, viewer);
        return new Contents(
                traced,
                viewing,
                people.takers(viewing.now()),
                alike,
                causes,
                dated.map(d -> ranking(number, sheet, d, viewer)).orElse(null),
                dated.map(d -> new QuestionsView(RankingView.questions(sheet, d)))
                        .orElse(null),
                ForecastView.of(viewing, dated.map(Diagnoses.Dated::category), earlier)
                        .orElse(null),
                new FormContext(dated.map(Diagnoses.Dated::category), limits.of(sheet), zone),
                devices.known(sheet.opened().device()).map(DeviceView::at).orElse(""),
                gate,
                coach.beside(sheet, gate, viewer),
                drafts.of(number, viewer),
                seals.of(number),
                base(number));
    }

    private @Nullable RankingView ranking(TicketNumber number, JobSheet sheet, Diagnoses.Dated dated, Actor viewer) {
        if (!(Sight.of(sheet, viewer) instanceof Sight.Open open)) {
            return null;
        }
        sights.note(number, sheet, viewer);
        return RankingView.of(sheet, dated, open);
    }

    TicketQueries.Broken broken(TicketNumber number, Actor viewer) {
        return tickets.broken(number, viewer);
    }

    /** Known causes help where the trouble is taken in and where its cause is named; in between the catalogue ranks. */
    private static boolean isSeekingKnown(JobSheet sheet) {
        return sheet.course().isOpen() && (sheet.step() == Step.IDENTIFY || sheet.step() == Step.DOCUMENT);
    }
}
