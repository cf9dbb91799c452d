package org.benchtrail.core.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.core.text.KindName;
import org.jspecify.annotations.Nullable;

/**
 * An act of an audit: what is kept of it, in the order of its course. Nothing of it is ever changed. What free text it has stands in
 * a component named {@code remark}, which the seal keeps as a commitment.
 */
public sealed interface AuditAct {

    /** Free words; empty where there are none. */
    default String remark() {
        return "";
    }

    /** Kinds by their stable names, such as {@code lot-frozen}. */
    static Map<String, Class<? extends AuditAct>> kinds() {
        Map<String, Class<? extends AuditAct>> kinds = new LinkedHashMap<>();
        for (Class<?> kind : AuditAct.class.getPermittedSubclasses()) {
            kinds.put(name(kind.asSubclass(AuditAct.class)), kind.asSubclass(AuditAct.class));
        }
        return kinds;
    }

    static String name(Class<? extends AuditAct> kind) {
        return KindName.of(kind);
    }

    /** @param plan text of an {@link AuditPlan} */
    record PlanStated(String plan) implements AuditAct {}

    /**
     * The list that is looked at, fixed.
     *
     * @param open how many tickets were open at the end of the period, and so are not in it
     * @param oldest when the oldest of them was opened; null if there is none
     * @param numbers by which its signals were made; null in lots from before they could be set, which had the usual ones
     */
    record LotFrozen(
            List<Item> items,
            int open,
            @Nullable Instant oldest,
            @Nullable SignalNumbers numbers) implements AuditAct {
        public LotFrozen {
            items = List.copyOf(items);
        }

        public LotFrozen(List<Item> items, int open, @Nullable Instant oldest) {
            this(items, open, oldest, null);
        }

        /** The numbers by which its signals were made. */
        SignalNumbers signalsBy() {
            return numbers == null ? SignalNumbers.USUAL : numbers;
        }
    }

    /**
     * A ticket as it was when it ended.
     *
     * @param entry number of the closing entry
     * @param hash of that entry
     */
    record Item(String ticket, int entry, String hash, Stratum stratum) {}

    /**
     * @param size of the log at the head
     * @param head the note whose bytes go into the seed
     * @param witness whose signature it bears; empty if the shop's alone
     */
    record SeedDrawn(long size, String head, String witness, String seed) implements AuditAct {}

    /** @param drawn by stratum, in drawn order */
    record SampleDrawn(Map<Stratum, List<String>> drawn) implements AuditAct {
        public SampleDrawn {
            drawn = Map.copyOf(drawn);
        }
    }

    /**
     * More is looked at because the random part was not accepted: all of it that is left.
     *
     * @param drawn by stratum, in drawn order
     */
    record RestDrawn(Map<Stratum, List<String>> drawn) implements AuditAct {
        public RestDrawn {
            drawn = Map.copyOf(drawn);
        }
    }

    /**
     * A ticket that somebody chose to have looked at as well. It stands outside every estimate.
     *
     * @param remark why
     */
    record TicketChosen(String ticket, String remark) implements AuditAct {}

    /**
     * The tickets with that signal are not shown any more, or shown again. It goes on to be measured.
     *
     * @param remark why
     */
    record SignalSwitched(SignalKind signal, boolean shown, String remark) implements AuditAct {}

    /**
     * @param turn 1 or 2
     * @param despite reasons for which the reviewer is not independent, where nobody was; empty if there is none
     * @param remark why the shop goes on without
     */
    record ReviewGiven(String ticket, int turn, String reviewer, List<String> despite, String remark)
            implements AuditAct {
        public ReviewGiven {
            despite = List.copyOf(despite);
        }
    }

    /** @param remark why the reviewer declines */
    record ReviewDeclined(String ticket, int turn, String remark) implements AuditAct {}

    /**
     * An unsigned review goes back to be given again, because who held it may not review any more.
     *
     * @param reviewer who held it
     */
    record ReviewReturned(String ticket, int turn, String reviewer) implements AuditAct {}

    /**
     * @param defect class of what is not satisfied; null for any other mark
     * @param entries on which it rests
     */
    record Marked(
            String ticket,
            int turn,
            String requirement,
            Mark mark,
            @Nullable DefectClass defect,
            List<Integer> entries,
            String remark)
            implements AuditAct {
        public Marked {
            entries = List.copyOf(entries);
        }
    }

    /** @param minutes between the first mark and the signature */
    record ReviewSigned(String ticket, long minutes) implements AuditAct {}

    /** As {@link ReviewSigned}, of the second, blind review. */
    record SecondSigned(String ticket, long minutes) implements AuditAct {}

    /** @param remark why, where the two differed */
    record Settled(
            String ticket,
            String requirement,
            Mark mark,
            @Nullable DefectClass defect,
            String remark) implements AuditAct {}

    /**
     * Two readers who agree little have talked.
     *
     * @param readers accounts of the two; null in an entry of the time when all readers of a lot were taken together
     */
    record TalkRecorded(String remark, @Nullable List<String> readers) implements AuditAct {
        /** The two, or nobody. */
        public List<String> pair() {
            return readers == null ? List.of() : readers;
        }
    }

    /**
     * What is missing in the papers is asked of who did the work.
     *
     * @param remark what to write
     */
    record AddendumAsked(String ticket, String requirement, Instant due, String remark) implements AuditAct {}

    /**
     * What was asked for never came, and is waited for no longer. The defect stays what it is.
     *
     * @param remark why
     */
    record AddendumClosed(String ticket, String requirement, String remark) implements AuditAct {}

    /**
     * @param items of which it speaks
     * @param accepted whether the random part had no more defects than the plan allows
     * @param remark what is done about it
     */
    record LotConcluded(int items, int lower, int upper, boolean accepted, String remark) implements AuditAct {}

    /** An act with its place in the lot's own chain. */
    record Entry(long place, Instant at, String by, AuditAct act) {}

    /** Acts of one kind, in their order. */
    static <A extends AuditAct> List<A> all(List<Entry> acts, Class<A> kind) {
        List<A> found = new ArrayList<>();
        acts.stream().map(Entry::act).filter(kind::isInstance).forEach(act -> found.add(kind.cast(act)));
        return found;
    }
}
