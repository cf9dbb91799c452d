package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** One fact has one canonical form: in the order of the choices, without what has no value. */
class EnumCopiesTest {
    private static final Set<Step> TWO = Set.of(Step.PLAN, Step.IDENTIFY);

    @Test
    void sets_areInTheOrderOfTheChoices() {
        assertEquals(List.of(Step.IDENTIFY, Step.PLAN), List.copyOf(EnumCopies.set(Step.class, TWO)));
        assertEquals(Set.of(), EnumCopies.set(Step.class, null));
        assertEquals(
                List.of(Step.IDENTIFY, Step.TEST, Step.PLAN),
                List.copyOf(EnumCopies.union(Step.class, TWO, Set.of(Step.TEST))));
        assertEquals(Set.of(Step.PLAN), EnumCopies.less(Step.class, TWO, Set.of(Step.IDENTIFY, Step.TEST)));
    }

    @Test
    void maps_leaveOutWhatHasNoValue() {
        Map<Step, Boolean> given = new EnumMap<>(Step.class);
        given.put(Step.TEST, true);
        given.put(Step.PLAN, null);
        assertEquals(Map.of(Step.TEST, true), EnumCopies.map(Step.class, given));
        assertEquals(Map.of(), EnumCopies.map(Step.class, null));
    }

    @Test
    void copies_areNotChangedAnyMore() {
        assertThrows(
                UnsupportedOperationException.class,
                () -> EnumCopies.set(Step.class, TWO).clear());
        assertThrows(
                UnsupportedOperationException.class,
                () -> EnumCopies.union(Step.class, TWO, TWO).clear());
    }
}
