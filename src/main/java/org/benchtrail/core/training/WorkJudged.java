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
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Role;
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

    /** Kinds of the entries that matter here; others may be left out. */
    public static Set<String> kinds() {
        Set<String> kinds = new LinkedHashSet<>(LEAVING);
        List.of(
                        Refused.class,
                        Remarked.class,
                        SentBack.class,
                        Reopened.class,
                        Rethought.class,
                        RuledOut.class,
                        VerifyFailed.class)
                .forEach(kind -> kinds.add(FactKinds.name(kind)));
        return kinds;
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
        Instant at = entry.stamp().at();
        boolean own = entry.stamp().by().equals(person);
        if (entry.fact() instanceof Refused refused) {
            if (own) {
                refused(refused, at);
            }
        } else if (entry.fact() instanceof Advanced || entry.fact() instanceof Closed) {
            if (own) {
                tried(at);
            }
            declaredGone = step == Step.VERIFY ? own : declaredGone;
            step = step == Step.DOCUMENT ? step : step.next();
        } else if (entry.fact() instanceof Reopened) {
            reopened(at);
        } else if (entry.fact() instanceof Remarked remark
                && !own
                && entry.stamp().roles().contains(Role.MENTOR)) {
            remarked(remark, entry.stamp().by(), at);
        } else if (entry.fact() instanceof SentBack) {
            sentBack(entry.stamp().by(), at);
        } else if (entry.fact() instanceof Rethought
                || entry.fact() instanceof RuledOut
                || entry.fact() instanceof VerifyFailed) {
            step = Step.THEORIZE;
        }
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
    private void remarked(Remarked remark, String mentor, Instant at) {
        String code = remark.requirement();
        if (code == null) {
            return;
        }
        if (remark.mark() != WorkMark.SATISFIED) {
            remarked.put(code, mentor);
        }
        if (remark.mark() != null && tried.containsKey(code)) {
            marked.put(code, new Judgement(code, at, remark.mark() == WorkMark.SATISFIED, false));
        }
    }

    private void tried(Instant at) {
        Requirements.of(step).forEach(r -> tried.putIfAbsent(r.code(), at));
    }

    private void refused(Refused refused, Instant at) {
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
