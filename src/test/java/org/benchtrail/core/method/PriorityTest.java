package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.method.Priority.Impact;
import org.benchtrail.core.method.Priority.Urgency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** All nine cells of the matrix (common practice, no source). */
class PriorityTest {
    @ParameterizedTest
    @CsvSource({
        "ONE_PERSON, CAN_WAIT, WHEN_PLANNED",
        "ONE_PERSON, HINDERED, THIS_WEEK",
        "ONE_PERSON, STOPPED, SAME_DAY",
        "SEVERAL, CAN_WAIT, THIS_WEEK",
        "SEVERAL, HINDERED, SAME_DAY",
        "SEVERAL, STOPPED, SAME_DAY",
        "WHOLE_SITE, CAN_WAIT, THIS_WEEK",
        "WHOLE_SITE, HINDERED, SAME_DAY",
        "WHOLE_SITE, STOPPED, AT_ONCE"
    })
    void matrix(Impact impact, Urgency urgency, Priority expected) {
        assertEquals(expected, Priority.of(impact, urgency));
    }

    @Test
    void moreImpactOrUrgency_isNeverLaterDue() {
        for (Impact impact : Impact.values()) {
            for (Urgency urgency : Urgency.values()) {
                int hours = Priority.of(impact, urgency).hours();
                for (Impact wider : Impact.values()) {
                    for (Urgency graver : Urgency.values()) {
                        if (wider.compareTo(impact) >= 0 && graver.compareTo(urgency) >= 0) {
                            assertTrue(Priority.of(wider, graver).hours() <= hours);
                        }
                    }
                }
            }
        }
    }
}
