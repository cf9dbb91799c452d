package org.benchtrail.core.method;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Unmodifiable copies in the order of the enum, so that one fact has one canonical form. */
public final class EnumCopies {
    private EnumCopies() {}

    /** A null set is an empty one. */
    public static <E extends Enum<E>> Set<E> set(Class<E> of, @Nullable Set<E> given) {
        Set<E> copy = EnumSet.noneOf(of);
        if (given != null) {
            copy.addAll(given);
        }
        return Collections.unmodifiableSet(copy);
    }

    public static <E extends Enum<E>> Set<E> union(Class<E> of, Set<E> some, Set<E> more) {
        Set<E> both = EnumSet.noneOf(of);
        both.addAll(some);
        both.addAll(more);
        return Collections.unmodifiableSet(both);
    }

    /** Those of the first that are not among the others. */
    public static <E extends Enum<E>> Set<E> less(Class<E> of, Set<E> all, Set<E> others) {
        Set<E> rest = EnumSet.noneOf(of);
        rest.addAll(all);
        rest.removeAll(others);
        return rest;
    }

    /** Without what has no value; a null map is an empty one. */
    public static <K extends Enum<K>, V> Map<K, V> map(Class<K> keys, @Nullable Map<K, V> given) {
        Map<K, V> copy = new EnumMap<>(keys);
        if (given != null) {
            given.forEach((key, value) -> {
                if (value != null) {
                    copy.put(key, value);
                }
            });
        }
        return Collections.unmodifiableMap(copy);
    }
}
