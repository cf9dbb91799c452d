package org.benchtrail.core.training;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Which questions are asked on a day. A question that was answered rightly comes again after 3, 7 and 21 days and then rests; one
 * that was not, the day after and a stage lower. A day without an answer changes no stage.
 *
 * <p>Source of the gaps: a choice of this project within what is published on gaps of 5 to 40 % of the time to be remembered
 * (Cepeda, Vul, Rohrer, Wixted, Pashler 2008, Psychol. Sci. 19:1095-1102).
 */
public final class RecallPlan {
    /** Asked on one day. */
    public static final int A_DAY = 3;

    /** A new one waits a day, as does one at the lowest stage. */
    private static final int[] GAPS = {1, 3, 7, 21};

    private static final int RESTS = GAPS.length;
    private static final int BACK = 2;

    private RecallPlan() {}

    /** An answer; one a day for each question. */
    public record Answered(String item, LocalDate day, boolean right) {}

    /**
     * How a question stands.
     *
     * @param stage 0 to 4
     * @param asked how often it was
     * @param due null while it is new, or rests
     */
    public record Stage(
            int stage,
            int asked,
            @Nullable LocalDate last,
            @Nullable LocalDate due) {
        static final Stage NEW = new Stage(0, 0, null, null);

        public boolean rests() {
            return stage == RESTS;
        }

        private Stage answered(Answered answer) {
            int next = answer.right ? Math.min(RESTS, stage + 1) : Math.max(0, stage - 1);
            int gap = answer.right && next < RESTS ? GAPS[next] : GAPS[0];
            return new Stage(next, asked + 1, answer.day, next == RESTS ? null : answer.day.plusDays(gap));
        }

        /** What rests comes back if a later job makes it again. */
        private Stage madeAgain(LocalDate made) {
            return rests() && last != null && made.isAfter(last)
                    ? new Stage(BACK, asked, last, made.plusDays(GAPS[0]))
                    : this;
        }
    }

    /** By question. */
    public static Map<String, Stage> stages(List<Answered> answers) {
        Map<String, Stage> stages = new HashMap<>();
        answers.stream()
                .sorted(Comparator.comparing(Answered::day))
                .forEach(a -> stages.put(
                        a.item, stages.getOrDefault(a.item, Stage.NEW).answered(a)));
        return stages;
    }

    /**
     * The questions of a day: the same ones all day, whatever is answered on it. Those that are due come first, safety before the
     * rest and the longest overdue before others; new ones fill up, safety before the rest, from the latest jobs, one a job. Of one
     * trade there is one a day, if others are there; of one form too, if another form is there.
     *
     * @param answers those of the day itself change nothing
     * @param zone in which the person's days begin: a job of today makes questions for tomorrow
     */
    public static List<RecallItem> of(List<RecallItem> items, List<Answered> answers, LocalDate day, ZoneId zone) {
        Map<String, Stage> stages =
                stages(answers.stream().filter(a -> a.day.isBefore(day)).toList());
        List<RecallItem> made =
                items.stream().filter(i -> made(i, zone).isBefore(day)).toList();
        Day picked = new Day();
        List<RecallItem> due = made.stream()
                .filter(i -> !day.isBefore(due(i, stages, zone)))
                .sorted(Comparator.comparing((RecallItem i) -> !i.safety())
                        .thenComparing(i -> -ChronoUnit.DAYS.between(due(i, stages, zone), day))
                        .thenComparing(RecallItem::id))
                .toList();
        List<RecallItem> fresh = made.stream()
                .filter(i -> !stages.containsKey(i.id()))
                .sorted(Comparator.comparing((RecallItem i) -> !i.safety())
                        .thenComparing((RecallItem i) -> i.source().ended(), Comparator.reverseOrder())
                        .thenComparing(RecallItem::id))
                .toList();
        picked.take(due, false);
        picked.take(fresh, true);
        return List.copyOf(picked.items);
    }

    private static LocalDate made(RecallItem item, ZoneId zone) {
        return item.source().ended().atZone(zone).toLocalDate();
    }

    /** {@link LocalDate#MAX} for what is new, or rests. */
    private static LocalDate due(RecallItem item, Map<String, Stage> stages, ZoneId zone) {
        LocalDate due = stages.getOrDefault(item.id(), Stage.NEW).madeAgain(made(item, zone)).due;
        return due == null ? LocalDate.MAX : due;
    }

    /** What is picked so far. */
    private static final class Day {
        private final List<RecallItem> items = new ArrayList<>();
        private final Set<String> trades = new HashSet<>();
        private final Set<RecallForm> forms = new HashSet<>();
        private final Set<String> jobs = new HashSet<>();

        /** Mixed as far as it goes: first what is of another trade and another form, then of another trade, then any. */
        void take(List<RecallItem> from, boolean oneAJob) {
            take(from, oneAJob, true, true);
            take(from, oneAJob, true, false);
            take(from, oneAJob, false, false);
        }

        private void take(List<RecallItem> from, boolean oneAJob, boolean oneATrade, boolean oneAForm) {
            for (RecallItem item : from) {
                boolean possible = items.size() < A_DAY
                        && !items.contains(item)
                        && !(oneAJob && jobs.contains(item.source().job()))
                        && !(oneATrade && trades.contains(item.source().trade()))
                        && !(oneAForm && forms.contains(item.form()));
                if (possible) {
                    items.add(item);
                    trades.add(item.source().trade());
                    forms.add(item.form());
                    jobs.add(item.source().job());
                }
            }
        }
    }
}
