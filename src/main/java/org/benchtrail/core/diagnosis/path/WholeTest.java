package org.benchtrail.core.diagnosis.path;

import java.util.List;
import org.benchtrail.core.diagnosis.Risk;

/**
 * A test of the whole category.
 *
 * @param act one of {@link PathAct#OF_THE_WHOLE}
 * @param segments what a sister shares, what is taken away, what depends on the load, or what a log can name; none for undo
 * @param minutes 0.5 to 10 000
 * @param same id of the listed finding that is this test; empty if none is
 */
public record WholeTest(
        PathAct act,
        String instruction,
        List<String> segments,
        double minutes,
        Risk risk,
        List<String> needs,
        List<String> cautions,
        String same) {
    public WholeTest {
        segments = List.copyOf(segments);
        needs = List.copyOf(needs);
        cautions = List.copyOf(cautions);
    }
}
