package org.benchtrail.core.training;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.WorkMark;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.benchtrail.core.statistics.Proportion;

/**
 * What one job says of one person's work, requirement by requirement: of the steps that they left or tried to leave themselves, whether
 * that went at the first try, and what those said of it who looked. Where nobody looked and nothing was refused, it says nothing: to
 * have written something is no success.
 */
public final class WorkJudged {
    static final Set<String> LEAVING = Set.of(FactKinds.name(Advanced.class), FactKinds.name(Closed.class));

    /** An act that is refused for one of these is one that could have done harm. */
    private static final Set<String> NEAR =
            Set.of("hazards-screened", "invasive-guarded", "cautions-taken", "data-protected", "plan-approved");

    private final String person;
    private final Map<String, Instant> tried = new LinkedHashMap<>();
    private final Map<String, Instant> missed = new LinkedHashMap<>();
    private final Map<String, String> remarked = new HashMap<>();
    private final Map<String, Instant> returned = new LinkedHashMap<>();
    private final Map<String, Judgement> marked = new LinkedHashMap<>();
    private final Map<String, List<CoachEvent>> events = new LinkedHashMap<>();
    private Step step = Step.IDENTIFY;

    /** Whether the symptom was last declared gone by that person. */
    private boolean declaredGone;

    private WorkJudged(String person) {
        this.person = person;
    }

    /**
     * What somebody who looked said of a requirement.
     *
     * @param at when it could be read
     * @param critical whether somebody or somebody's data could have come to harm by it
     */
    public record Judgement(String code, Instant at, boolean satisfied, boolean critical) {
        /** Of two who looked, what the stricter one said. */
        private static Judgement worse(Judgement one, Judgement other) {
            return one.critical || (!one.satisfied && !other.critical) ? one : other;
        }
    }

    /** What an entry of a kind tells of the work. */
    private record Reader<F extends Fact>(Class<F> kind, Reading<F> reading) {
        private void read(WorkJudged work, Entry entry) {
            if (kind.isInstance(entry.fact())) {
                reading.read(work, kind.cast(entry.fact()), entry.stamp());
            }
        }
    }

    private interface Reading<F extends Fact> {
        void read(WorkJudged work, F fact, Stamp stamp);
    }

    private static final List<Reader<?>> READERS = List.of(
            new Reader<>(Advanced.class, (work, fact, stamp) -> work.left(stamp)),
            new Reader<>(Closed.class, (work, fact, stamp) -> work.left(stamp)),
            new Reader<>(Refused.class, WorkJudged::refused),
            new Reader<>(Remarked.class, WorkJudged::remarked),
            new Reader<>(SentBack.class, (work, fact, stamp) -> work.sentBack(stamp.by(), stamp.at())),
            new Reader<>(Reopened.class, (work, fact, stamp) -> work.reopened(stamp.at())),
            new Reader<>(Rethought.class, (work, fact, stamp) -> work.step = Step.THEORIZE),
            new Reader<>(RuledOut.class, (work, fact, stamp) -> work.step = Step.THEORIZE),
            new Reader<>(VerifyFailed.class, (work, fact, stamp) -> work.step = Step.THEORIZE));

    /** Kinds of the entries that matter here; others may be left out. */
    public static Set<String> kinds() {
        return READERS.stream().map(reader -> FactKinds.name(reader.kind)).collect(Collectors.toUnmodifiableSet());
    }

    /**
     * @param entries of the job, in their order
     * @param judged what was said of it elsewhere; of one requirement once at most
     */
    public static Map<String, List<CoachEvent>> of(
            List<Entry> entries, String person, List<Judgement> judged, CoachChoices chosen) {
        WorkJudged work = new WorkJudged(person);
        entries.forEach(work::read);
        work.missed.forEach((code, at) -> work.occasion(code, at, false, chosen));
        work.returned.forEach((code, at) -> work.missedLater(code, at, chosen));
        judged.forEach(judgement -> work.marked.merge(judgement.code(), judgement, Judgement::worse));
        work.marked.values().forEach(judgement -> work.judged(judgement, chosen));
        return work.events;
    }

    /**
     * How many of the requirements of {@link CoachTrial#JUDGED} that person met at the first try to leave their step.
     *
     * @param untrue codes of what was found otherwise than it was written
     */
    public static Proportion firstTries(List<Entry> entries, String person, Set<String> untrue) {
        WorkJudged work = new WorkJudged(person);
        entries.forEach(work::read);
        return new Proportion(
                CoachTrial.JUDGED.stream()
                        .filter(work.tried::containsKey)
                        .filter(code -> !work.missed.containsKey(code) && !untrue.contains(code))
                        .count(),
                CoachTrial.JUDGED.size());
    }

    /** Codes of what that person missed at the first try to leave a step, or had sent back by a mentor, in that order. */
    static List<String> missedBy(List<Entry> entries, String person) {
        WorkJudged work = new WorkJudged(person);
        entries.forEach(work::read);
        Set<String> codes = new LinkedHashSet<>(work.missed.keySet());
        work.returned.keySet().stream().filter(work.tried::containsKey).forEach(codes::add);
        return List.copyOf(codes);
    }

    private void read(Entry entry) {
        READERS.forEach(reader -> reader.read(this, entry));
    }

    private boolean isOwn(Stamp stamp) {
        return stamp.by().equals(person);
    }

    private void left(Stamp stamp) {
        if (isOwn(stamp)) {
            tried(stamp.at());
        }
        declaredGone = step == Step.VERIFY ? isOwn(stamp) : declaredGone;
        step = step == Step.DOCUMENT ? step : step.next();
    }

    /** Said to be gone, and it was not: somebody went on working with it. */
    private void reopened(Instant at) {
        if (declaredGone) {
            add(VerifyRequirement.SYMPTOMS_GONE.code(), new CoachEvent.CriticalMiss(at));
        }
        declaredGone = false;
        step = Step.IDENTIFY;
    }

    /** A mark counts once the person has tried to leave the step without it: before, it is help. The last one stands. */
    private void remarked(Remarked remark, Stamp stamp) {
        String code = remark.requirement();
        if (code == null || isOwn(stamp) || !stamp.roles().contains(Role.MENTOR)) {
            return;
        }
        if (remark.mark() != WorkMark.SATISFIED) {
            remarked.put(code, stamp.by());
        }
        if (remark.mark() != null && tried.containsKey(code)) {
            marked.put(code, new Judgement(code, stamp.at(), remark.mark() == WorkMark.SATISFIED, false));
        }
    }

    private void tried(Instant at) {
        Requirements.of(step).forEach(r -> tried.putIfAbsent(r.code(), at));
    }

    private void refused(Refused refused, Stamp stamp) {
        Instant at = stamp.at();
        if (!isOwn(stamp)) {
            return;
        }
        if (LEAVING.contains(refused.act())) {
            tried(at);
            refused.missing().stream().filter(WorkJudged::isRequirement).forEach(code -> {
                tried.putIfAbsent(code, at);
                missed.putIfAbsent(code, at);
            });
        } else {
            refused.missing().stream().filter(NEAR::contains).forEach(code -> add(code, new CoachEvent.NearMiss(at)));
        }
    }

    private static boolean isRequirement(String code) {
        return Requirements.of(code).isPresent();
    }

    /** What the mentor who sends it back had put a remark on is not satisfied. */
    private void sentBack(String mentor, Instant at) {
        remarked.forEach((code, by) -> {
            if (by.equals(mentor)) {
                returned.putIfAbsent(code, at);
            }
        });
        remarked.values().removeIf(mentor::equals);
    }

    private void missedLater(String code, Instant at, CoachChoices chosen) {
        if (tried.containsKey(code) && missed.putIfAbsent(code, at) == null) {
            occasion(code, at, false, chosen);
        }
    }

    private void judged(Judgement judgement, CoachChoices chosen) {
        String code = judgement.code();
        if (!tried.containsKey(code)) {
            return;
        }
        if (!judgement.satisfied() && judgement.critical()) {
            add(code, new CoachEvent.CriticalMiss(judgement.at()));
        } else if (!missed.containsKey(code)) {
            occasion(code, judgement.at(), judgement.satisfied(), chosen);
        }
    }

    private void occasion(String code, Instant at, boolean met, CoachChoices chosen) {
        Instant worked = Objects.requireNonNull(tried.get(code));
        add(
                code,
                new CoachEvent.Occasion(at, worked, met, chosen.at(code, worked).orElse(null)));
    }

    private void add(String code, CoachEvent event) {
        events.computeIfAbsent(code, c -> new ArrayList<>()).add(event);
    }

    static boolean isOfSafety(String code) {
        return Requirements.of(code).filter(CoachTexts::isOfSafety).isPresent();
    }
}
