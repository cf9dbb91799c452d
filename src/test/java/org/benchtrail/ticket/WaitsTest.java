package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.Set;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.junit.jupiter.api.Test;

/** What the row of a ticket says of those it waits for. */
class WaitsTest {
    private static final Waits NOTHING = new Waits(null, null);

    private JobSheet sheet = JobSheet.open(new Entry(
            stamp(1, "tim", Role.TRAINEE),
            new Opened(
                    "40718-6",
                    "Dark",
                    "",
                    Category.DISPLAY,
                    "Screen",
                    "Office",
                    17,
                    Priority.Impact.ONE_PERSON,
                    Priority.Urgency.HINDERED,
                    "tim",
                    Set.of(Role.TRAINEE))));

    private static Stamp stamp(int entry, String account, Role role) {
        return new Stamp(entry, Instant.parse("2031-03-03T08:00:00Z").plusSeconds(entry), account, Set.of(role));
    }

    private Waits after(String account, Role role, Fact... facts) {
        for (Fact fact : facts) {
            sheet = sheet.with(new Entry(stamp(sheet.entries() + 1, account, role), fact));
        }
        return Waits.of(sheet);
    }

    private Waits afterTim(Fact... facts) {
        return after("tim", Role.TRAINEE, facts);
    }

    @Test
    void waiver_waitsForASupervisorUntilItIsGiven() {
        assertEquals(NOTHING, Waits.of(sheet));
        assertEquals(
                new Waits("a waiver", null), afterTim(new Asked(AskKind.WAIVER, "logs-reviewed", "There are none")));
        assertEquals(NOTHING, after("sue", Role.SUPERVISOR, new Waived("logs-reviewed", "There are none")));
    }

    @Test
    void approvalOfATraineesPlan_waitsForBoth() {
        String plan = "an approval of the plan";
        assertEquals(new Waits(plan, plan), afterTim(new Asked(AskKind.APPROVAL, null, "")));
    }

    @Test
    void lessening_waitsForASupervisorUntilItIsAgreedTo() {
        afterTim(new SymptomRecorded("Dark", "No picture", true), new Advanced());
        assertEquals(
                new Waits("agreement to a correction", null),
                afterTim(new Corrected(2, "It did not", new SymptomRecorded("Dark", "No picture", false))));
        assertEquals(NOTHING, after("sue", Role.SUPERVISOR, new LesseningAgreed(4, "Seen by me")));
    }

    @Test
    void traineesSummary_waitsForAMentorsAnswer() {
        afterTim(new Advanced(), new Advanced(), new Advanced(), new Advanced(), new Advanced());
        Waits signature = new Waits(null, "a signature");
        assertEquals(signature, afterTim(new Signed(Signatory.ASSIGNEE)));
        assertEquals(NOTHING, after("meg", Role.MENTOR, new SentBack("Say more")));
        assertEquals(signature, afterTim(new Signed(Signatory.ASSIGNEE)));
        assertEquals(NOTHING, after("meg", Role.MENTOR, new Signed(Signatory.MENTOR)));
    }
}
