package org.benchtrail.core.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.benchtrail.core.audit.AuditAct.Entry;
import org.benchtrail.core.audit.AuditAct.LotFrozen;
import org.benchtrail.core.audit.AuditAct.PlanStated;
import org.benchtrail.core.audit.AuditAct.RestDrawn;
import org.benchtrail.core.audit.AuditAct.SampleDrawn;
import org.benchtrail.core.audit.AuditAct.SeedDrawn;
import org.benchtrail.core.integrity.Hash;
import org.jspecify.annotations.Nullable;

/** Holds a draw against what the log sealed of it, and does it again: which of its parts was altered, if any. */
public final class DrawCheck {
    /** What a draw is made of, each from those before it. */
    public enum Part {
        PLAN("plan", of(PlanStated.class, PlanStated::plan)),
        LIST("list", of(LotFrozen.class, frozen -> frozen)),
        HEAD("head", of(SeedDrawn.class, seed -> List.of(seed.head(), seed.size(), seed.witness()))),
        SEED("seed", of(SeedDrawn.class, SeedDrawn::seed)),
        ORDER("drawn order", act -> act instanceof SampleDrawn || act instanceof RestDrawn ? act : null);

        private final String words;
        private final Function<AuditAct, @Nullable Object> within;

        Part(String words, Function<AuditAct, @Nullable Object> within) {
            this.words = words;
            this.within = within;
        }

        private static <A extends AuditAct> Function<AuditAct, @Nullable Object> of(
                Class<A> kind, Function<A, Object> within) {
            return act -> kind.isInstance(act) ? within.apply(kind.cast(act)) : null;
        }

        private boolean isIn(@Nullable AuditAct act) {
            return act != null && within.apply(act) != null;
        }

        private boolean isAlike(AuditAct kept, @Nullable AuditAct told) {
            return told != null && Objects.equals(within.apply(kept), within.apply(told));
        }
    }

    /** A part that is not as it was, and how that is seen. */
    public record Fault(Part part, String sentence) {}

    /**
     * What the log says of an act.
     *
     * @param act as its record tells it; null if the record tells none
     * @param sealed whether the record is the one that was sealed
     */
    public record Told(@Nullable AuditAct act, boolean sealed) {}

    /**
     * What the keys and the log say of the head that was kept.
     *
     * @param log whether the log signed it
     * @param witness whether the witness that the plan names signed it; true if it names none
     * @param first whether it is the first one that comes after the freeze
     */
    public record Signed(boolean log, boolean witness, boolean first) {
        private boolean holds() {
            return log && witness && first;
        }
    }

    private final Map<Part, Fault> faults = new EnumMap<>(Part.class);
    /** What stands neither in its own place nor in its record as it was: nothing is judged by it. */
    private final Set<Part> unknown = EnumSet.noneOf(Part.class);

    private DrawCheck() {}

    /** Whether an act is one of those that make the draw. */
    public static boolean isOfDraw(AuditAct act) {
        return parts(act).findAny().isPresent();
    }

    /**
     * What was altered; empty if all agrees.
     *
     * @param kept as it is stored, drawn
     * @param told by place, of each act that makes the draw
     */
    public static List<Fault> of(AuditLot kept, Map<Long, Told> told, Signed head) {
        DrawCheck check = new DrawCheck();
        List<Entry> trusted = new ArrayList<>();
        for (Entry entry : kept.acts()) {
            if (isOfDraw(entry.act())) {
                Told of = told.getOrDefault(entry.place(), new Told(null, false));
                check.compare(entry.act(), of, head);
                trusted.add(of.sealed() && of.act() != null ? with(entry, of.act()) : entry);
            }
        }
        check.head(head);
        check.again(AuditLot.of(kept.id(), trusted));
        return List.copyOf(check.faults.values());
    }

    private static Entry with(Entry entry, AuditAct act) {
        return new Entry(entry.place(), entry.at(), entry.by(), act);
    }

    private void compare(AuditAct kept, Told told, Signed head) {
        parts(kept)
                .filter(part -> !part.isAlike(kept, told.act()))
                .forEach(part -> find(
                        part,
                        told.sealed()
                                ? "The " + part.words + " was altered: what is kept is not what the log sealed."
                                : "The record of the " + part.words + " was altered: it is not what the log sealed."));
        if (!told.sealed() && parts(kept).noneMatch(faults::containsKey)) {
            // of head and seed, which are one act, the one that its signatures do not vouch for
            Part part = parts(kept)
                    .filter(p -> p != Part.HEAD || !head.holds())
                    .findFirst()
                    .orElseThrow();
            unknown.add(part);
            find(
                    part,
                    "The " + part.words + " was altered: neither what is kept nor its record is what the log sealed.");
        }
    }

    private static Stream<Part> parts(AuditAct act) {
        return Arrays.stream(Part.values()).filter(part -> part.isIn(act));
    }

    private void head(Signed head) {
        if (!head.log()) {
            find(Part.HEAD, "The head was altered: the log did not sign it.");
        }
        if (!head.witness()) {
            find(Part.HEAD, "The head was altered: the witness that the plan names did not sign it.");
        }
        if (!head.first()) {
            find(Part.HEAD, "The head was altered: it is not the first that came after the freeze.");
        }
    }

    /** The draw once more, from what the log sealed where it says so. */
    private void again(AuditLot lot) {
        if (isKnown(Part.PLAN, Part.HEAD)) {
            SeedDrawn seed = lot.seed().orElseThrow();
            if (!seed.witness().equals(lot.plan().witness())) {
                find(Part.HEAD, "The head was altered: the plan names another witness.");
            }
            if (!lot.seedAgain().map(Hash::hex).orElse("").equals(seed.seed())) {
                find(Part.SEED, "The seed was altered: head and plan give another.");
            }
        }
        if (isKnown(Part.PLAN, Part.LIST, Part.SEED) && !lot.sample().equals(lot.drawn())) {
            find(Part.ORDER, "The drawn order was altered: plan, list and seed give another.");
        }
    }

    private boolean isKnown(Part... parts) {
        return Arrays.stream(parts).noneMatch(unknown::contains);
    }

    private void find(Part part, String sentence) {
        faults.putIfAbsent(part, new Fault(part, sentence));
    }
}
