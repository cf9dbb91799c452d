package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth.Played;
import org.benchtrail.core.site.Due;
import org.benchtrail.core.training.Ties;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.Resemblance;
import org.benchtrail.ticket.TicketLimits;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.coach.Coach;
import org.benchtrail.ticket.coach.CoachView;
import org.benchtrail.ticket.draft.TypedDraft;
import org.benchtrail.ticket.form.FormContext;
import org.benchtrail.ticket.sheet.SheetQueries;
import org.benchtrail.ticket.theorize.QuestionsView;
import org.benchtrail.ticket.theorize.RankingView;

/** What can be read of practice jobs: each person's own, by themselves. */
@ApplicationScoped
@Transactional
class PracticeQueries {
    private static final Duration DAY = Duration.ofHours(8);

    private final PracticeStore store;
    private final Diagnoses diagnoses;
    private final Catalogues catalogues;
    private final TicketLimits limits;
    private final SiteBook site;
    private final Coach coach;

    PracticeQueries(
            PracticeStore store,
            Diagnoses diagnoses,
            Catalogues catalogues,
            TicketLimits limits,
            SiteBook site,
            Coach coach) {
        this.store = store;
        this.diagnoses = diagnoses;
        this.catalogues = catalogues;
        this.limits = limits;
        this.site = site;
        this.coach = coach;
    }

    List<PracticeStore.Line> own(Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        return store.of(actor.account());
    }

    PracticeJob job(int number, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        return store.job(number, actor.account()).orElseThrow(() -> new NotFound("practice job " + number));
    }

    FormContext context(JobSheet sheet, ZoneId zone) {
        return new FormContext(diagnoses.category(sheet), limits.of(sheet), zone);
    }

    DebriefView debrief(PracticeJob job) {
        Model model = catalogues
                .inForce()
                .model(Ties.of(job.truth().family()).category())
                .orElseThrow();
        return DebriefView.of(job, job.sheet(), model);
    }

    /** The sheet of a job in the job's own time: nothing is like it, nobody takes it over, and no draft is kept. */
    SheetQueries.Contents contents(PracticeJob job, Played played, Actor viewer, ZoneId zone) {
        JobSheet sheet = job.sheet();
        Instant now = played.clock().now();
        Map<String, String> names = new HashMap<>(
                Map.of(viewer.account(), viewer.name(), InventedMentor.ACTOR.account(), InventedMentor.ACTOR.name()));
        Viewing viewing = new Viewing(
                sheet,
                viewer,
                zone,
                now,
                site.rules().policy(),
                site.history().workingTime(),
                Collections.unmodifiableMap(names));
        Optional<Diagnoses.Dated> dated = sheet.course().isOpen() ? diagnoses.of(sheet) : Optional.empty();
        TicketQueries.Whole whole = new TicketQueries.Whole(
                job.number(), line(job, sheet, now), sheet, "", "an invented requester", "by the acts below");
        List<Requirement.Status> gate = Resemblance.gate(sheet, viewing.policy(), now, Resemblance.isAsked(sheet));
        return new SheetQueries.Contents(
                new TicketQueries.Traced(whole, job.trail()),
                viewing,
                List.of(),
                List.of(),
                List.of(),
                dated.map(d -> RankingView.of(sheet, d, Sight.ofPractice())).orElse(null),
                dated.map(d -> new QuestionsView(RankingView.questions(sheet, d)))
                        .orElse(null),
                null,
                context(sheet, zone),
                "",
                gate,
                job.isSilent() ? CoachView.NONE : coach.besidePractice(sheet, gate, viewer),
                TypedDraft.NONE,
                null,
                job.base());
    }

    private static TicketLine line(PracticeJob job, JobSheet sheet, Instant now) {
        return new TicketLine(
                job.number().serial(),
                sheet.opened().title(),
                sheet.opened().category(),
                sheet.opened().device(),
                sheet.opened().place(),
                sheet.opened().priority(),
                sheet.step(),
                sheet.course().standing(),
                sheet.course().round(),
                sheet.course().assignee(),
                job.morning(),
                job.morning().plus(DAY),
                Due.What.FIX,
                null,
                null,
                false,
                false,
                sheet.entries(),
                now);
    }

    static List<Family> families() {
        return List.of(Family.values());
    }
}
