package org.benchtrail.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.benchtrail.core.method.TicketNumber;

/** The causes of tickets that a supervisor accepted as cases. */
@ApplicationScoped
public class CaseTruths {
    private final LearningCases cases;

    CaseTruths(LearningCases cases) {
        this.cases = cases;
    }

    /** Id of the cause by ticket, where its latest closing is accepted; what was withdrawn, or opened again, has none. */
    @Transactional
    public Map<TicketNumber, String> of(Collection<TicketNumber> tickets) {
        Map<TicketNumber, String> truths = new HashMap<>();
        for (LearningCase row :
                cases.of(tickets.stream().map(TicketNumber::serial).toList())) {
            if (row.state == CaseState.ACCEPTED && row.cause != null) {
                truths.put(row.number(), row.cause);
            } else {
                truths.remove(row.number());
            }
        }
        return truths;
    }
}
