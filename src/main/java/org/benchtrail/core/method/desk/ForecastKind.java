package org.benchtrail.core.method.desk;

import java.util.Arrays;
import java.util.Locale;

/** What a forecast is about, and before what it is due. */
public enum ForecastKind {
    /** The cause, before anything is shown that is like the ticket. */
    CAUSES_EARLY("the causes, before what is alike is shown"),
    /** The cause, before the ranked causes and the next test are shown; once a round. */
    CAUSES("the causes, before their ranking is shown"),
    /** Whether a check comes as it is expected, before its result. Offered, and never demanded. */
    CHECK("how sure a check is to come as expected"),
    /** What a question is answered with, before it is. Offered, and never demanded. */
    FINDING("what will be found"),
    /** Whether an action takes the trouble away, before it is carried out. Offered, and never demanded. */
    ACTION("whether the trouble is gone after an action");

    private final String words;

    ForecastKind(String words) {
        this.words = words;
    }

    /** Whether it is one of the causes, which are due before they are shown; others are one chance of one thing. */
    public boolean isOfCauses() {
        return this == CAUSES_EARLY || this == CAUSES;
    }

    public String words() {
        return words;
    }

    /** @throws IllegalArgumentException if there is none of that id */
    public static ForecastKind of(String id) {
        return Arrays.stream(values())
                .filter(kind -> kind.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no kind of forecast: " + id));
    }

    /** As it stands in what a commitment stands for. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
