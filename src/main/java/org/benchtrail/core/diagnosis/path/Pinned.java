package org.benchtrail.core.diagnosis.path;

import java.util.Collection;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The segments that what is recorded puts a fault in: the home of its cause, if the cause is an entry of the catalogue; else
 * those that an answer names, by a test of one of them that came out so, or by the log. Nothing is ranked for it.
 */
public final class Pinned {
    private static final String YES = GenericTest.NO_YES.get(1);

    private Pinned() {}

    /**
     * Ids of segments; empty if nothing names one.
     *
     * @param cause id that the catalogue has or had before; null if nobody named an entry of it
     * @param findings answers, each as {@code finding=value}
     */
    public static Set<String> segments(Localiser kind, @Nullable String cause, Collection<String> findings) {
        return kind.category()
                .cause(cause)
                .flatMap(c -> kind.paths().home(c.id()))
                .map(home -> Set.of(home.id()))
                .orElseGet(() -> findings.stream()
                        .flatMap(f -> named(kind.paths(), f))
                        .collect(Collectors.toCollection(TreeSet::new)));
    }

    private static Stream<String> named(CategoryPaths paths, String finding) {
        Stream<String> byAnswer = paths.stands().stream()
                .filter(s -> PathAct.OF_A_SEGMENT.contains(s.act()) && finding.equals(s.finding() + "=" + s.positive()))
                .flatMap(s -> s.segments().stream());
        Stream<String> byTest = paths.segments().stream()
                .map(Segment::id)
                .filter(id -> finding.equals(GenericTest.LOG + "=" + id)
                        || PathAct.OF_A_SEGMENT.stream()
                                .anyMatch(act -> finding.equals(GenericTest.id(act, id) + "=" + YES)));
        return Stream.concat(byAnswer, byTest);
    }
}
