package org.benchtrail.core.learning;

import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.DeskFact;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;

/**
 * Who had to do with a ticket, in whatever round, by account: what it teaches is for others to judge.
 *
 * @param hands who recorded anything that is work, put it right, closed the ticket, or has it
 * @param overseers who let a requirement go unmet, answered for a plan or a part, or signed as mentor
 */
public record TicketPeople(Set<String> hands, Set<String> overseers) {
    private static final Set<Class<? extends Fact>> OVERSEEING =
            Set.of(Waived.class, PlanApproved.class, PlanDeclined.class, PartOverrideApproved.class);

    private static final Set<Class<? extends Fact>> AT_WORK =
            Set.of(Corrected.class, CautionsAcknowledged.class, Closed.class);

    public TicketPeople {
        hands = Set.copyOf(hands);
        overseers = Set.copyOf(overseers);
    }

    public static TicketPeople of(JobSheet sheet) {
        Set<String> hands = new TreeSet<>();
        Set<String> overseers = new TreeSet<>();
        for (StandingFact<?> standing : sheet.facts()) {
            if (oversees(standing.fact())) {
                overseers.add(standing.stamp().by());
            } else if (isWork(standing.fact())) {
                hands.add(standing.stamp().by());
            }
        }
        String assignee = sheet.course().assignee();
        if (assignee != null) {
            hands.add(assignee);
        }
        return new TicketPeople(hands, overseers);
    }

    /** Whatever is no matter of the desk, and of that what only works or closes. */
    private static boolean isWork(Fact fact) {
        return !(fact instanceof DeskFact) || AT_WORK.contains(fact.getClass());
    }

    private static boolean oversees(Fact fact) {
        return OVERSEEING.contains(fact.getClass())
                || (fact instanceof Signed signed && signed.signatory() == Signatory.MENTOR);
    }
}
