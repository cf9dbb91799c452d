package org.benchtrail.core.diagnosis.path;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Risk;

/**
 * A place behind a segment where one can measure, or put in a good device.
 *
 * @param after id of the segment that it lies behind
 * @param at where that is, in words
 * @param bad what is seen if it is bad there
 * @param faultThen on which side the fault lies if it is bad there
 * @param badElsewhere whether it is bad there too while the fault is on no segment of the path
 * @param minutes 0.5 to 10 000
 * @param same the listed finding that is this very test
 */
public record Point(
        String after,
        String at,
        String instruction,
        String bad,
        Side faultThen,
        boolean badElsewhere,
        double minutes,
        Risk risk,
        List<String> cautions,
        Optional<Same> same) {
    /** Value of a finding's {@code bad} that stands for all but the first. */
    static final String ABNORMAL = "abnormal";

    /** A side of the point. */
    public enum Side {
        /** Towards the source, the segment before the point included. */
        UPSTREAM,
        /** Towards the load. */
        DOWNSTREAM
    }

    /**
     * A listed finding that is this test.
     *
     * @param bad its value that means bad here, or {@code abnormal} for all but the first
     */
    public record Same(String finding, String bad) {}

    public Point {
        cautions = List.copyOf(cautions);
    }
}
