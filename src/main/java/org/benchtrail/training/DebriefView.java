package org.benchtrail.training;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Truth.Played;
import org.benchtrail.core.training.Debrief;
import org.benchtrail.core.training.FaultWords;
import org.benchtrail.core.training.Ties;
import org.benchtrail.core.training.ToldApart;

/**
 * What a practice job that has ended shows of itself.
 *
 * @param opened whether the truth is what was sealed before the first act
 * @param named the cause that was named, and whether it is right; empty if none was
 */
record DebriefView(
        int id,
        String title,
        String ended,
        String truth,
        String commitment,
        boolean opened,
        String seed,
        String salt,
        boolean solved,
        String named,
        List<Minutes> minutes,
        String regret,
        String divergent,
        String apart,
        List<Harmed> harmed,
        List<String> hazards,
        List<String> outside,
        String firstTry,
        List<String> missed,
        List<PracticeView.Row> acts) {
    record Minutes(String whose, String worked, String waited) {}

    /** @param prevented what would have stopped it */
    record Harmed(int place, String what, String entry, String sentence, String prevented) {}

    static DebriefView of(PracticeJob job, JobSheet sheet, Model model) {
        Played played = job.played();
        Debrief debrief = Debrief.of(job.truth(), played, model);
        return new DebriefView(
                job.id(),
                job.truth().title(),
                job.state().words(),
                FaultWords.of(job.truth().fault()),
                job.commitment(),
                job.opens(),
                job.truth().canonical(),
                HexFormat.of().formatHex(job.salt()),
                played.device().isWell(),
                named(job, sheet, model),
                minutes(played, debrief),
                PracticeView.minutes(debrief.regret()),
                divergent(debrief, model),
                apart(job, played, model),
                harmed(job, debrief),
                hazards(job),
                outside(job),
                firstTry(sheet),
                missed(sheet).stream().map(DebriefView::title).toList(),
                PracticeView.rows(played));
    }

    /** A cause named in words is that of the catalogue with those words. */
    static boolean isRight(CauseNamed named, Set<String> right, Model model) {
        return (named.causeId() != null && right.contains(named.causeId()))
                || model.category().causes().stream()
                        .anyMatch(c -> right.contains(c.id()) && c.name().equals(named.cause()));
    }

    private static String named(PracticeJob job, JobSheet sheet, Model model) {
        Optional<CauseNamed> named = sheet.latest(CauseNamed.class).map(n -> n.fact());
        Set<String> right =
                Ties.of(job.truth().family()).causes().getOrDefault(job.truth().fault(), Set.of());
        return named.map(n -> n.cause() + (isRight(n, right, model) ? ": right" : ": not what was wrong"))
                .orElse("");
    }

    private static List<Minutes> minutes(Played played, Debrief debrief) {
        List<Minutes> rows = new ArrayList<>();
        rows.add(line("Yours", played));
        String whose = debrief.recommended().solved()
                ? "The catalogue's next best acts, same device"
                : "The catalogue's next best acts, not solved";
        rows.add(line(whose, debrief.recommended().played()));
        debrief.least()
                .ifPresent(least -> rows.add(new Minutes(
                        "Least, with all that is prudent and a trial at the end", PracticeView.minutes(least), "")));
        return rows;
    }

    private static Minutes line(String whose, Played played) {
        return new Minutes(
                whose,
                PracticeView.minutes(played.clock().handsOn()),
                PracticeView.minutes(played.clock().waiting()));
    }

    private static String divergent(Debrief debrief, Model model) {
        return debrief.firstDivergent()
                .map(d -> "act " + (debrief.acts().indexOf(d) + 1) + ", \""
                        + d.act().label() + "\", cost "
                        + PracticeView.minutes(d.regret().orElse(0)) + " more than the best act then"
                        + d.better().map(b -> ": " + words(b, model)).orElse("") + ".")
                .orElse("");
    }

    private static String words(Action action, Model model) {
        return switch (action.type()) {
            case TEST ->
                model.category().findings().stream()
                        .filter(f -> f.id().equals(action.id()))
                        .map(f -> f.act().replaceFirst("\\.$", ""))
                        .findFirst()
                        .orElse(action.id());
            case ESCALATE -> "to escalate";
            default ->
                "the repair of "
                        + model.category().cause(action.id()).map(c -> c.name()).orElse(action.id());
        };
    }

    /** Against the fault that the catalogue took for the likeliest wrong one before the first act. */
    private static String apart(PracticeJob job, Played played, Model model) {
        return ToldApart.fromRival(job.truth(), model)
                .map(r -> "From " + FaultWords.of(r.other()) + " it is told by: "
                        + r.told().act().way().words() + " " + r.told().act().label() + " ("
                        + PracticeView.minutes(r.told().act().minutes()) + "). "
                        + taken(played, r.told().act()))
                .orElse("");
    }

    private static String taken(Played played, DeviceAct act) {
        for (int i = 0; i < played.steps().size(); i++) {
            if (played.steps().get(i).act() == act) {
                return "You took it as act " + (i + 1) + ".";
            }
        }
        return "You did not take it.";
    }

    private static List<Harmed> harmed(PracticeJob job, Debrief debrief) {
        List<PracticeJob.Done> acts = onDevice(job);
        List<Harmed> all = new ArrayList<>();
        for (int i = 0; i < debrief.acts().size(); i++) {
            Debrief.Judged act = debrief.acts().get(i);
            String prevented = act.skipped().stream().map(DeviceAct::label).collect(Collectors.joining("; "));
            String entry = "after entry " + acts.get(i).entry() + ", at "
                    + acts.get(i).step().title();
            for (var harm : act.harm()) {
                all.add(new Harmed(
                        i + 1,
                        act.act().label(),
                        entry,
                        harm.sentence(),
                        prevented.isEmpty() ? "not doing it" : prevented));
            }
        }
        return all;
    }

    private static List<String> hazards(PracticeJob job) {
        List<String> all = new ArrayList<>();
        job.hazards()
                .forEach((hazard, words) -> all.add(words + " That is " + hazard.words() + ": "
                        + (job.named(hazard) ? "you named it." : "you did not name it.")));
        return all;
    }

    private static List<PracticeJob.Done> onDevice(PracticeJob job) {
        return job.done().stream()
                .filter(d -> Deed.of(job.truth().family(), d.act()).act() != null)
                .toList();
    }

    /** Repairs that were made before there was a plan. */
    static List<String> outside(PracticeJob job) {
        return onDevice(job).stream()
                .filter(d -> d.step().isBefore(Step.PLAN))
                .map(d -> job.truth().family().act(d.act()))
                .filter(a -> a.way() == DeviceAct.Way.MEND)
                .map(DeviceAct::label)
                .toList();
    }

    private static Set<String> missed(JobSheet sheet) {
        Set<String> moves = Set.of(FactKinds.name(Advanced.class), FactKinds.name(Closed.class));
        Set<String> missed = new HashSet<>();
        sheet.all(Refused.class).stream()
                .filter(r -> moves.contains(r.fact().act()))
                .forEach(r -> missed.addAll(r.fact().missing()));
        return missed;
    }

    private static String firstTry(JobSheet sheet) {
        List<Requirement> asked = Requirements.all().stream()
                .filter(r -> !sheet.step().isBefore(r.step()))
                .filter(r -> !sheet.course().isOpen() || r.step().isBefore(sheet.step()))
                .toList();
        Set<String> missed = missed(sheet);
        long met = asked.stream().filter(r -> !missed.contains(r.code())).count();
        return asked.isEmpty()
                ? "No step was left"
                : met + " of " + asked.size() + " requirements of the steps that were left";
    }

    private static String title(String code) {
        return Requirements.of(code).map(Requirement::title).orElse(code);
    }
}
