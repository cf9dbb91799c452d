package org.benchtrail.ticket.sheet;

import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.core.method.Step;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.Viewing;

/** What was recorded in a round before the present one, by step. */
public record EarlierRound(int round, List<OfStep> steps) {

    public record OfStep(String title, List<EntryLine> facts) {}

    static List<EarlierRound> all(Viewing viewing) {
        return IntStream.range(1, viewing.sheet().round())
                .mapToObj(round -> of(round, viewing))
                .toList();
    }

    private static EarlierRound of(int round, Viewing viewing) {
        return new EarlierRound(
                round,
                List.of(Step.values()).stream()
                        .map(step -> new OfStep(step.title(), StepRow.facts(step, round, viewing)))
                        .filter(of -> !of.facts().isEmpty())
                        .toList());
    }
}
