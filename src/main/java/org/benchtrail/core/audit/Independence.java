package org.benchtrail.core.audit;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;

/** Why a person does not review a ticket: whatever part they had in it, in any round, whether its entry still stands or not. */
public final class Independence {
    private static final Map<Class<? extends Fact>, String> JUDGED = judged();

    private Independence() {}

    /**
     * Somebody who might review.
     *
     * @param account by which entries name them
     * @param name as requesters are written down
     */
    public record Person(String account, String name) {}

    /**
     * What else is known of a ticket than its trail says.
     *
     * @param requester name of who reported it
     * @param acceptedBy accounts that accepted it as a case to learn from
     */
    public record Beside(String requester, Set<String> acceptedBy) {
        public Beside {
            acceptedBy = Set.copyOf(acceptedBy);
        }
    }

    private static Map<Class<? extends Fact>, String> judged() {
        Map<Class<? extends Fact>, String> judged = new LinkedHashMap<>();
        judged.put(PlanApproved.class, "approved its plan");
        judged.put(PlanDeclined.class, "declined its plan");
        judged.put(Waived.class, "waived a requirement");
        judged.put(PartOverrideApproved.class, "let a part through");
        judged.put(LesseningAgreed.class, "agreed to a correction");
        judged.put(StopWorkCleared.class, "cleared a hazard");
        judged.put(SentBack.class, "sent it back");
        judged.put(Cancelled.class, "cancelled it");
        return judged;
    }

    /**
     * The reasons, in words that follow a name; empty if there is none. What a person does counts whenever they do it. That a ticket
     * was handed to them by another counts until the list was fixed: after the draw it would be a way to keep a reviewer from it.
     *
     * @param sheet as it is now
     * @param trail all entries there are now
     * @param frozen when the list was fixed
     */
    public static List<String> reasons(
            Person person, JobSheet sheet, List<Entry> trail, Instant frozen, Beside beside) {
        Set<String> reasons = new LinkedHashSet<>();
        if (sheet.hands().contains(person.account())) {
            reasons.add("worked on it");
        }
        for (Entry entry : trail) {
            boolean own = person.account().equals(entry.stamp().person());
            boolean counts = own || !entry.stamp().at().isAfter(frozen);
            if (counts && person.account().equals(holder(entry.fact()))) {
                reasons.add("had it assigned");
            }
            if (own) {
                String judged = judged(entry.fact());
                if (!judged.isEmpty()) {
                    reasons.add(judged);
                }
            }
        }
        if (beside.acceptedBy().contains(person.account())) {
            reasons.add("accepted it as a case");
        }
        if (folded(beside.requester()).equals(folded(person.name()))) {
            reasons.add("reported it");
        }
        return List.copyOf(reasons);
    }

    /** In whose hands it comes by that fact; empty if in nobody's. */
    private static String holder(Fact fact) {
        if (fact instanceof Opened opened) {
            return opened.assignee() == null ? "" : opened.assignee();
        }
        return fact instanceof HandedOver over ? over.to() : "";
    }

    private static String judged(Fact fact) {
        if (fact instanceof Signed signed) {
            return signed.signatory() == Signatory.MENTOR ? "signed it as mentor" : "";
        }
        return JUDGED.getOrDefault(fact.getClass(), "");
    }

    private static String folded(String name) {
        return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
