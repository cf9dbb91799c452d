package org.benchtrail.core.diagnosis.path;

import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.jspecify.annotations.Nullable;

/**
 * What ends the testing whatever another test would still save: the fault is gone, so that nothing shows it to a test, or what
 * proves the leading cause was seen. Common practice, no source.
 */
final class Settled {
    /** Rather there than anywhere else. */
    private static final double LIKELY = 0.5;

    /** From this belief on a cause leads. */
    private static final double LEADING = 0.3;

    /** A cause mostly shows what proves it. */
    private static final double MOSTLY = 0.85;

    /** What proves a cause is seen so many times as often with it as usually. */
    private static final double TIMES_AS_OFTEN = 10;

    private final PlacedModel placed;
    private final Ranking ranking;
    private final Map<String, Report> answers;

    Settled(PlacedModel placed, Ranking ranking) {
        this.placed = placed;
        this.ranking = ranking;
        answers = Equipment.latest(ranking.evidence());
    }

    /**
     * The places in which something seated anew, replaced, left out or set back took the fault away, if the fault is rather there
     * than elsewhere; none once a repair failed after that. What is done to several places at once does not say which one it was.
     */
    Set<String> mended() {
        Set<String> mended = new HashSet<>();
        placed.tests().stream()
                .filter(t -> PathAct.MENDING.contains(t.act())
                        && says(t.id(), t.values().get(1)))
                .map(GenericTest::segments)
                .forEach(mended::addAll);
        placed.layout().paths().stands().stream()
                .filter(s -> s.segments().size() == 1
                        && PathAct.MENDING.contains(s.act())
                        && says(s.finding(), s.positive()))
                .map(StandsFor::segments)
                .forEach(mended::addAll);
        Map<String, Double> masses = placed.masses(ranking.partProbabilities());
        double mass =
                mended.stream().mapToDouble(s -> masses.getOrDefault(s, 0.0)).sum();
        return mass >= LIKELY ? Set.copyOf(mended) : Set.of();
    }

    private boolean says(String test, String value) {
        @Nullable Report answer = answers.get(test);
        Evidence evidence = ranking.evidence();
        return answer != null
                && !answer.presumed()
                && answer.value().equals(value)
                && evidence.failedRepairs().stream().noneMatch(f -> f.at().isAfter(answer.at()));
    }

    /**
     * The listed cause that leads, if somebody saw what proves it: a value that it mostly shows and that hardly anything else
     * does.
     */
    Optional<String> proven() {
        String leader = ranking.topListed();
        return Optional.of(leader)
                .filter(c -> ranking.probability(c) >= LEADING)
                .filter(c -> placed.subjects().settling(c).stream()
                        .map(answers::get)
                        .filter(Objects::nonNull)
                        .anyMatch(r -> !r.presumed() && isProof(c, r)));
    }

    private boolean isProof(String cause, Report seen) {
        double usual = placed.model().category().findings().stream()
                .filter(f -> f.id().equals(seen.finding()))
                .map(Finding::background)
                .map(b -> b.getOrDefault(seen.value(), 1.0))
                .findFirst()
                .orElse(1.0);
        double shown = placed.model().likelihood(seen.finding(), seen.value(), cause);
        return shown >= MOSTLY && shown >= TIMES_AS_OFTEN * usual;
    }
}
