package org.benchtrail.core.method;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What corrections do not take away: who has worked on a ticket and who has judged that work, and what was owed before it was
 * corrected. Grows while a sheet is replayed.
 */
final class Ledger {
    /** Roles that each of the hands had when acting. */
    private final Map<String, Set<Role>> hands = new HashMap<>();

    private final Set<String> judges = new HashSet<>();
    private final Map<Integer, Lessening> lessenings = new TreeMap<>();
    private final Map<Class<?>, Integer> struck = new HashMap<>();

    Ledger copy() {
        Ledger copy = new Ledger();
        hands.forEach((account, roles) -> copy.hands.put(account, EnumSet.copyOf(roles)));
        copy.judges.addAll(judges);
        copy.lessenings.putAll(lessenings);
        copy.struck.putAll(struck);
        return copy;
    }

    void takesPart(Part part, Stamp stamp, @Nullable String assignee) {
        boolean own = stamp.person().equals(assignee);
        if (part.isWork(own)) {
            hands.computeIfAbsent(stamp.person(), a -> EnumSet.noneOf(Role.class))
                    .addAll(stamp.roles());
        }
        if (part.isJudging(own)) {
            judges.add(stamp.person());
        }
    }

    Ledger judgedBy(List<String> others) {
        Ledger copy = copy();
        copy.judges.addAll(others);
        return copy;
    }

    /** An entry is put right: what it obliged to before is owed on, unless the change takes nothing of that away. */
    void changed(StandingFact<?> before, @Nullable Fact after, Stamp stamp, boolean slip) {
        if (after == null) {
            struck.put(before.fact().getClass(), stamp.entry());
        }
        Lessening pending = lessenings.get(before.entry());
        StandingFact<?> owed = pending == null ? before : pending.owed();
        if (!slip && owed.fact().isLessenedBy(after)) {
            lessenings.put(before.entry(), new Lessening(owed, stamp));
        } else {
            lessenings.remove(before.entry());
        }
    }

    /** An answer is given anew: what was owed by those before it is owed on, unless the new one asks for as much. */
    void replaced(StandingFact<?> before, Fact now, Stamp stamp, boolean slip) {
        lessenings
                .values()
                .removeIf(l -> l.owed().fact().getClass() == now.getClass()
                        && !l.owed().fact().isLessenedBy(now));
        if (!slip && before.fact().isLessenedBy(now)) {
            lessenings.put(before.entry(), new Lessening(before, stamp));
        }
    }

    void agreed(int correction) {
        lessenings.values().removeIf(l -> l.by().entry() == correction);
    }

    Set<String> hands() {
        return Set.copyOf(hands.keySet());
    }

    boolean isHand(String account) {
        return hands.containsKey(account);
    }

    boolean isJudge(String account) {
        return judges.contains(account);
    }

    boolean worked(Role role) {
        return hands.values().stream().anyMatch(roles -> roles.contains(role));
    }

    /** What obliges of the facts of a kind that stand, and what was owed before a correction. */
    <F extends Fact> List<StandingFact<F>> owed(Class<F> kind, List<StandingFact<F>> standing) {
        List<StandingFact<F>> owed = new ArrayList<>(standing);
        if (!owed.isEmpty() && owed.get(0).fact().replacesEarlier()) {
            owed.subList(0, owed.size() - 1).clear();
        }
        for (Lessening lessening : lessenings.values()) {
            if (kind.isInstance(lessening.owed().fact())) {
                @SuppressWarnings("unchecked") // its fact is of that kind
                StandingFact<F> before = (StandingFact<F>) lessening.owed();
                owed.add(0, before);
            }
        }
        owed.sort(Comparator.comparingInt(StandingFact::entry));
        return owed;
    }

    /** By entry. */
    Collection<Lessening> lessenings() {
        return lessenings.values();
    }

    /** Entry with which a fact of that kind was last struck out; 0 if none ever was. */
    int lastStruck(Class<? extends Fact> kind) {
        return struck.getOrDefault(kind, 0);
    }
}
