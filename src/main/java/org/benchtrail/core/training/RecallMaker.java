package org.benchtrail.core.training;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.method.test.TestRequirement;
import org.benchtrail.core.training.RecallItem.Choice;

/**
 * Makes questions from a job by fixed forms: nobody writes them, and their key is what the record, the bench or the table of
 * requirements says. A job that tells nothing makes none.
 */
public final class RecallMaker {
    private static final int CHOICES = 4;

    private final RecallJob job;
    private final CoachTexts texts;
    private final Map<String, Integer> asked;
    private final List<RecallItem> made = new ArrayList<>();

    private RecallMaker(RecallJob job, CoachTexts texts, Map<String, Integer> asked) {
        this.job = job;
        this.texts = texts;
        this.asked = asked;
    }

    /**
     * @param jobs that have ended
     * @param asked how often each question was asked before, by its id: a value is drawn anew each time
     * @return each question once; one that several jobs make is that of the job that ended last
     */
    public static List<RecallItem> of(List<RecallJob> jobs, CoachTexts texts, Map<String, Integer> asked) {
        Map<String, RecallItem> all = new LinkedHashMap<>();
        jobs.stream()
                .sorted(Comparator.comparing((RecallJob j) -> j.source().ended())
                        .thenComparing(j -> j.source().job()))
                .flatMap(j -> new RecallMaker(j, texts, asked).made())
                .forEach(item -> all.put(item.id(), item));
        return List.copyOf(all.values());
    }

    private Stream<RecallItem> made() {
        nextLacks();
        apart();
        values();
        whatFirst();
        whys();
        estimates();
        return made.stream();
    }

    private String id(RecallForm form, int entry) {
        return form.id() + ":" + job.source().job() + ":" + entry;
    }

    /** The first time at each step, if something of it had been recorded by then. */
    private void nextLacks() {
        Set<Step> steps = new HashSet<>();
        for (StandingFact<Refused> refused : job.sheet().all(Refused.class, this::isOwnLeave)) {
            List<Requirement> asks = Requirements.of(refused.during());
            List<String> missing = asks.stream()
                    .map(Requirement::code)
                    .filter(refused.fact().missing()::contains)
                    .toList();
            List<String> recorded = recorded(refused);
            if (!missing.isEmpty() && !recorded.isEmpty() && steps.add(refused.during())) {
                add(
                        RecallForm.NEXT_LACK,
                        id(RecallForm.NEXT_LACK, refused.entry()),
                        missing.stream().anyMatch(WorkJudged::isOfSafety),
                        "You wanted to leave " + refused.during().title()
                                + " with this recorded. What was still missing? Tick all of it.",
                        recorded,
                        asks.stream().map(r -> new Choice(r.code(), r.title())).toList(),
                        missing,
                        "The step was refused until it was there.",
                        refused.entry());
            }
        }
    }

    private boolean isOwnLeave(StandingFact<Refused> refused) {
        return WorkJudged.LEAVING.contains(refused.fact().act()) && isOwn(refused);
    }

    private boolean isOwn(StandingFact<?> fact) {
        return fact.stamp().by().equals(job.person());
    }

    /** Kinds alone: what they say may name somebody. */
    private List<String> recorded(StandingFact<Refused> before) {
        return job.sheet().facts().stream()
                .filter(f -> f.entry() < before.entry() && f.round() == before.round())
                .filter(f -> !f.stamp().by().equals(Stamp.SERVER))
                .map(StandingFact::fact)
                .filter(f -> f.shownUnder() == before.during() && !f.saidByServer())
                .map(Fact::getClass)
                .map(kind -> FactKinds.name(kind).replace('-', ' '))
                .distinct()
                .toList();
    }

    private void apart() {
        job.apart().ifPresent(a -> {
            String id = id(RecallForm.TOLD_APART, 0);
            ToldApart told = a.told();
            List<Choice> choices = Stream.concat(
                            Stream.of(new Choice(told.act().id(), told.act().label())),
                            drawn(a.others(), id).limit(CHOICES - 1L))
                    .toList();
            add(
                    RecallForm.TOLD_APART,
                    id,
                    false,
                    "It was " + a.fault() + ". Which one of these tells it best from " + a.other() + "?",
                    List.of("Reported: " + a.report()),
                    drawn(choices, id).toList(),
                    List.of(told.act().id()),
                    "It speaks by " + Math.round(told.decibans()) + " decibans for what was wrong and costs "
                            + Math.round(told.act().minutes()) + " min.",
                    0);
        });
    }

    /** Drawn within three standard uncertainties of a limit, in steps of half of one; judged like any reading. */
    private void values() {
        for (StandingFact<ReadingRecorded> reading : job.sheet().all(ReadingRecorded.class, this::isOwn)) {
            String id = id(RecallForm.VALUE, reading.entry());
            redrawn(reading.fact(), id + "#" + asked.getOrDefault(id, 0)).ifPresent(now -> {
                ReadingVerdict verdict = now.verdict();
                add(
                        RecallForm.VALUE,
                        id,
                        false,
                        "Does " + now.value() + " " + now.unit() + " lie within its limit, with this instrument?",
                        List.of(
                                now.quantity() + ": " + now.limitWords(),
                                "The instrument is good for ± " + now.accuracy() + "; "
                                        + "\u201coutside\u201d and \u201cwithin\u201d ask for " + now.guard()
                                        + " standard uncertainties between value and limit"),
                        List.of(
                                new Choice(ReadingVerdict.WITHIN.name(), "within"),
                                new Choice(ReadingVerdict.OUTSIDE.name(), "outside"),
                                new Choice(ReadingVerdict.TOO_CLOSE.name(), "too close to call")),
                        List.of(verdict.name()),
                        "Its standard uncertainty is "
                                + Numeral.of(now.standardUncertainty().orElseThrow(), 2) + " " + now.unit()
                                + ", so the limit has to be "
                                + Numeral.of(
                                        now.standardUncertainty().orElseThrow()
                                                * new BigDecimal(String.valueOf(now.guard())).doubleValue(),
                                        2)
                                + " " + now.unit() + " away.",
                        reading.entry());
            });
        }
    }

    private static Optional<ReadingRecorded> redrawn(ReadingRecorded reading, String draw) {
        String limit = reading.upper() == null ? reading.lower() : reading.upper();
        double u = reading.standardUncertainty().orElse(0);
        if (limit == null || u <= 0) {
            return Optional.empty();
        }
        BigDecimal halves =
                BigDecimal.valueOf(Math.floorMod(spread(draw), 13) - 6L).multiply(new BigDecimal("0.5"));
        int places = Math.max(0, new BigDecimal(reading.value()).scale());
        BigDecimal value = new BigDecimal(limit)
                .add(halves.multiply(BigDecimal.valueOf(u)))
                .setScale(places, RoundingMode.HALF_UP);
        return Optional.of(new ReadingRecorded(
                reading.quantity(),
                value.toPlainString(),
                reading.unit(),
                reading.point(),
                reading.instrument(),
                reading.lower(),
                reading.upper(),
                reading.limitSource(),
                reading.accuracy(),
                reading.guard(),
                reading.finding()));
    }

    /** Of a job on which somebody or somebody's data could have come to harm. */
    private void whatFirst() {
        boolean hazard = job.sheet().all(HazardsScreened.class).stream()
                .anyMatch(h -> !h.fact().found().isEmpty());
        boolean data = job.sheet().all(DataAnswered.class).stream()
                .anyMatch(d -> d.fact().state() != DataState.NO_USER_DATA);
        if (!hazard && !data) {
            return;
        }
        Choice first = hazard
                ? new Choice(IdentifyRequirement.HAZARDS_SCREENED.code(), "Look for each hazard, at the device")
                : new Choice(IdentifyRequirement.DATA_PROTECTED.code(), "Read a file back from the backup");
        List<Choice> order = List.of(
                first,
                new Choice(TestRequirement.EXPECTATION_FIRST.code(), "Write what you expect the test to show"),
                new Choice(PlanRequirement.ACTION_PLANNED.code(), "Write what will be done, with its way back"),
                new Choice(PlanRequirement.CAUTIONS_TAKEN.code(), "Take the precautions that the act asks for"));
        String id = id(RecallForm.WHAT_FIRST, 0);
        add(
                RecallForm.WHAT_FIRST,
                id,
                true,
                "In which order are these done?",
                List.of(hazard ? "There is a hazard at the device." : "There are data of the user on the device."),
                shuffled(order, id),
                order.stream().map(Choice::id).toList(),
                "People and data first; the expectation before the result; the plan before the act, and the precautions"
                        + " that it asks for right before it.",
                0);
    }

    private static List<Choice> shuffled(List<Choice> order, String seed) {
        List<Choice> drawn = new ArrayList<>(drawn(order, seed).toList());
        if (drawn.equals(order)) {
            Collections.reverse(drawn);
        }
        return drawn;
    }

    /** What was missed at the first try or sent back: the entry shown is the coach's poor one, not what somebody wrote. */
    private void whys() {
        for (String code : WorkJudged.missedBy(job.entries(), job.person())) {
            Requirement requirement = Requirements.of(code).orElseThrow();
            CoachText text = texts.of(code);
            String id = RecallForm.WHY.id() + ":" + code;
            List<Choice> others = Requirements.of(requirement.step()).stream()
                    .filter(r -> r != requirement)
                    .map(RecallMaker::choice)
                    .toList();
            List<Choice> choices = Stream.concat(
                            Stream.of(choice(requirement)), drawn(others, id).limit(CHOICES - 1L))
                    .toList();
            if (choices.size() > 1) {
                add(
                        RecallForm.WHY,
                        id,
                        CoachTexts.isOfSafety(requirement),
                        "Which requirement of " + requirement.step().title() + " does this not meet, and why?",
                        List.of(text.poor()),
                        drawn(choices, id + "#").toList(),
                        List.of(code),
                        text.fails(),
                        0);
            }
        }
    }

    private static Choice choice(Requirement requirement) {
        return new Choice(requirement.code(), requirement.title());
    }

    private void estimates() {
        for (StandingFact<BenchResultAttached> soak : job.sheet()
                .all(
                        BenchResultAttached.class,
                        b -> isOwn(b) && b.fact().calculation().equals(Soak.CALCULATION.id()))) {
            Soak.Input input = job.soaks().get(soak.entry());
            if (input != null) {
                double hours = input.every();
                double percent = input.doubt();
                double needed = Soak.calculate(new Soak.Input(hours, percent, null))
                        .figures()
                        .get(0)
                        .value();
                add(
                        RecallForm.ESTIMATE,
                        id(RecallForm.ESTIMATE, soak.entry()),
                        false,
                        "How many hours does it have to run clean?",
                        List.of(
                                "The fault came about every " + Numeral.of(hours) + " h",
                                "Quiet by luck is allowed in " + Numeral.of(percent) + " % of cases"),
                        List.of(),
                        List.of(Double.toString(needed)),
                        Numeral.of(hours) + " × ln(1 / " + Numeral.of(percent / 100) + ") = " + Numeral.of(needed, 4)
                                + " h; within 5 % counts.",
                        soak.entry());
            }
        }
    }

    private void add(
            RecallForm form,
            String id,
            boolean safety,
            String asks,
            List<String> given,
            List<Choice> choices,
            List<String> key,
            String because,
            int entry) {
        made.add(new RecallItem(id, form, job.source(), safety, asks, given, choices, key, because, entry));
    }

    /** In an order that tells nothing and is the same each time. */
    private static Stream<Choice> drawn(List<Choice> choices, String seed) {
        return choices.stream()
                .sorted(Comparator.comparingInt((Choice c) -> spread(seed + "|" + c.id()))
                        .thenComparing(Choice::id));
    }

    /** The finisher of a published hash, so that names that differ little come far apart (murmur3, 32 bits; from memory). */
    private static int spread(String text) {
        int h = text.hashCode();
        h = (h ^ h >>> 16) * 0x85ebca6b;
        h = (h ^ h >>> 13) * 0xc2b2ae35;
        return h ^ h >>> 16;
    }
}
