package org.benchtrail.core.method;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Facts as they stand, findable by kind and by entry, in the order of recording. Grows while a sheet is replayed; a finished
 * sheet's is not changed any more.
 */
final class FactIndex {
    /** The kinds under which a fact is found: its own, and those of the groups it belongs to. */
    private static final ClassValue<List<Class<?>>> KINDS = new ClassValue<>() {
        @Override
        protected List<Class<?>> computeValue(Class<?> type) {
            List<Class<?>> kinds = new ArrayList<>();
            kinds.add(type);
            collect(type, kinds);
            return List.copyOf(kinds);
        }
    };

    private final Map<Class<?>, List<StandingFact<?>>> byKind = new HashMap<>();

    private static void collect(Class<?> type, List<Class<?>> kinds) {
        for (Class<?> group : type.getInterfaces()) {
            if (Fact.class.isAssignableFrom(group)) {
                kinds.add(group);
                collect(group, kinds);
            }
        }
    }

    FactIndex copy() {
        FactIndex copy = new FactIndex();
        byKind.forEach((kind, facts) -> copy.byKind.put(kind, new ArrayList<>(facts)));
        return copy;
    }

    FactIndex only(Predicate<StandingFact<?>> which) {
        FactIndex some = new FactIndex();
        of(Fact.class).stream().filter(which).forEach(some::add);
        return some;
    }

    /** All of a kind; unmodifiable. */
    @SuppressWarnings("unchecked") // a list holds only facts of the kind under which it is kept
    <F extends Fact> List<StandingFact<F>> of(Class<F> kind) {
        List<?> facts = byKind.getOrDefault(kind, List.of());
        return Collections.unmodifiableList((List<StandingFact<F>>) facts);
    }

    void add(StandingFact<?> standing) {
        for (Class<?> kind : KINDS.get(standing.fact().getClass())) {
            byKind.computeIfAbsent(kind, k -> new ArrayList<>()).add(standing);
        }
    }

    /** Lets another fact of the same kind stand in place of the one with that entry number; nothing if there is none. */
    void replace(int entry, Fact replacement, Stamp corrected) {
        find(entry).ifPresent(old -> {
            StandingFact<?> now =
                    new StandingFact<>(replacement, old.stamp(), old.round(), old.during(), old.late(), corrected);
            listsOf(old).forEach(facts -> facts.set(position(facts, entry), now));
        });
    }

    /** Nothing if there is none with that entry number. */
    void strike(int entry) {
        find(entry).ifPresent(old -> listsOf(old).forEach(facts -> facts.remove(position(facts, entry))));
    }

    /** The fact that was recorded by that entry, as it stands. */
    Optional<StandingFact<?>> find(int entry) {
        int at = position(of(Fact.class), entry);
        return at < 0 ? Optional.empty() : Optional.of(of(Fact.class).get(at));
    }

    Optional<? extends StandingFact<?>> lastOf(Class<? extends Fact> kind) {
        List<? extends StandingFact<?>> all = of(kind);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    /** What was recorded after that entry, of which there is a fact. */
    List<? extends StandingFact<?>> since(int entry) {
        List<? extends StandingFact<?>> all = of(Fact.class);
        return all.subList(position(all, entry) + 1, all.size());
    }

    /** The lists that hold that fact. */
    private Stream<List<StandingFact<?>>> listsOf(StandingFact<?> standing) {
        return KINDS.get(standing.fact().getClass()).stream().map(kind -> byKind.getOrDefault(kind, List.of()));
    }

    /** Position of an entry in a list in the order of entries; negative if it is not there. */
    static int position(List<? extends StandingFact<?>> facts, int entry) {
        int low = 0;
        int high = facts.size();
        while (low < high) {
            int middle = (low + high) / 2;
            if (facts.get(middle).entry() < entry) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low < facts.size() && facts.get(low).entry() == entry ? low : -1;
    }
}
