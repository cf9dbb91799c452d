package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.training.FaultWords;
import org.benchtrail.core.training.RecallItem.Choice;
import org.benchtrail.core.training.RecallItem.Source;
import org.benchtrail.core.training.RecallJob;
import org.benchtrail.core.training.Ties;
import org.benchtrail.core.training.ToldApart;
import org.benchtrail.platform.LastUsed;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.Sights;

/** Practice jobs that questions are made from: those that have ended, so that nothing that is sealed is asked. */
@ApplicationScoped
class RecallPractice {
    private static final int LATEST = 40;
    private static final int KEPT = 500;

    private final PracticeStore store;
    private final Catalogues catalogues;
    private final Sights sights;

    /** Nothing of an ended job changes. */
    private final Map<Integer, RecallJob> kept = LastUsed.map(KEPT);

    RecallPractice(PracticeStore store, Catalogues catalogues, Sights sights) {
        this.store = store;
        this.catalogues = catalogues;
        this.sights = sights;
    }

    /** What tells causes apart is left out of the trades in which the viewer's forecast is due. */
    List<RecallJob> jobs(Actor viewer) {
        List<PracticeStore.Ended> ended = store.ended(viewer.account());
        List<RecallJob> jobs = ended.subList(Math.max(0, ended.size() - LATEST), ended.size()).stream()
                .map(e -> job(e, viewer.account()))
                .toList();
        if (jobs.isEmpty() || sights.due("", viewer).isEmpty()) {
            return jobs;
        }
        return jobs.stream()
                .map(j -> isVeiled(j, viewer) ? j.withoutCauses() : j)
                .toList();
    }

    private boolean isVeiled(RecallJob job, Actor viewer) {
        return sights.due(job.sheet().opened().category().catalogue(), viewer).isPresent();
    }

    private RecallJob job(PracticeStore.Ended ended, String person) {
        RecallJob known = kept.get(ended.id());
        if (known != null) {
            return known;
        }
        PracticeJob job = store.job(ended.id(), person).orElseThrow(() -> new NotFound("practice job " + ended.id()));
        Truth truth = job.truth();
        Source source = new Source(
                "practice-" + job.id(),
                "/practice/" + job.id(),
                "/practice/" + job.id() + "/sheet/trail#e",
                Category.valueOf(truth.family().trade()).title() + ", practice",
                ended.ended());
        RecallJob made = new RecallJob(source, person, job.sheet(), Soaks.of(job.sheet()), apart(truth));
        kept.put(ended.id(), made);
        return made;
    }

    private Optional<RecallJob.Apart> apart(Truth truth) {
        Model model =
                catalogues.inForce().model(Ties.of(truth.family()).category()).orElseThrow();
        return ToldApart.fromRival(truth, model)
                .map(rival -> new RecallJob.Apart(
                        truth.report(),
                        FaultWords.of(truth.fault()),
                        FaultWords.of(rival.other()),
                        rival.told(),
                        others(truth, rival)));
    }

    private static List<Choice> others(Truth truth, ToldApart.Rival rival) {
        return Stream.concat(
                        truth.family().acts().stream().filter(a -> a.way() == DeviceAct.Way.LOOK),
                        truth.family().acts().stream().filter(a -> a.way() == DeviceAct.Way.MEASURE))
                .filter(a -> !rival.asGood().contains(a))
                .map(a -> new Choice(a.id(), a.label()))
                .toList();
    }
}
