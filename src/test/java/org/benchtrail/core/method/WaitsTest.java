package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.OfferWithdrawn;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Resumed;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.Wait;
import org.benchtrail.core.method.desk.WaitKind;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.desk.Waits;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.junit.jupiter.api.Test;

/** Whom a ticket waits for, and until when. */
class WaitsTest {
    private static final Instant START = Instant.parse("2031-03-03T08:00:00Z");

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
        return new Stamp(entry, START.plusSeconds(entry), account, Set.of(role));
    }

    /** What waits after these facts, each as "kind for whom". */
    private List<String> after(String account, Role role, Fact... facts) {
        for (Fact fact : facts) {
            sheet = sheet.with(new Entry(stamp(sheet.entries() + 1, account, role), fact));
        }
        return waits().stream().map(WaitsTest::words).toList();
    }

    private List<Wait> waits() {
        return Waits.of(sheet, Policy.usual());
    }

    private static String words(Wait wait) {
        String whom = wait.account() != null
                ? wait.account()
                : (wait.supervisors() ? "supervisors" : "") + (wait.mentors() ? "mentors" : "");
        return wait.kind() + " " + whom;
    }

    private List<String> afterTim(Fact... facts) {
        return after("tim", Role.TRAINEE, facts);
    }

    private void toDocument() {
        afterTim(new Advanced(), new Advanced(), new Advanced(), new Advanced(), new Advanced());
    }

    @Test
    void waiver_waitsForASupervisorUntilItIsGiven() {
        assertEquals(List.of(), afterTim());
        assertEquals(
                List.of("WAIVER supervisors"), afterTim(new Asked(AskKind.WAIVER, "logs-reviewed", "There are none")));
        assertEquals("tim", waits().get(0).asker());
        assertEquals(List.of(), after("sue", Role.SUPERVISOR, new Waived("logs-reviewed", "There are none")));
    }

    /** As long as they have not said how it went; it waits for nobody else. */
    @Test
    void presence_waitsForWhoeverWasPresent() {
        assertEquals(List.of("PRESENCE mona"), after("mona", Role.MENTOR, new PresenceSigned(1, "tim")));
        assertEquals(
                List.of("PRESENCE mona", "PRESENCE mona"), after("mona", Role.MENTOR, new PresenceSigned(1, "tim")));
        assertEquals(List.of("PRESENCE mona"), after("mona", Role.MENTOR, new PresenceEnded(2, true, "All well")));
        assertEquals(List.of(), after("mona", Role.MENTOR, new PresenceEnded(3, false, "Called away")));
    }

    @Test
    void approvalOfATraineesPlan_waitsForBoth() {
        assertEquals(List.of("APPROVAL supervisorsmentors"), afterTim(new Asked(AskKind.APPROVAL, null, "")));
    }

    @Test
    void mentorWhoIsAsked_hasAnsweredWithARemark_whichWaitsUntilTheAssigneeGoesOn() {
        assertEquals(List.of("MENTOR mentors"), afterTim(new Asked(AskKind.MENTOR, null, "Is it the lamp?")));
        assertEquals(List.of("REMARK tim"), after("meg", Role.MENTOR, new Remarked(null, null, "Look at the fuse")));
        assertEquals(List.of(), afterTim(new SymptomRecorded("Dark", "No picture", false)));
    }

    @Test
    void lessening_waitsForASupervisorUntilItIsAgreedTo() {
        afterTim(new SymptomRecorded("Dark", "No picture", true), new Advanced());
        assertEquals(
                List.of("LESSENING supervisors"),
                afterTim(new Corrected(2, "It did not", new SymptomRecorded("Dark", "No picture", false))));
        assertEquals(4, waits().get(0).entry());
        assertEquals(List.of(), after("sue", Role.SUPERVISOR, new LesseningAgreed(4, "Seen by me")));
    }

    @Test
    void traineesSummary_waitsForAMentorsAnswer_andWhatIsSentBackForTheTrainee() {
        toDocument();
        List<String> signature = List.of("SIGNATURE mentors");
        assertEquals(signature, afterTim(new Signed(Signatory.ASSIGNEE)));
        assertEquals(List.of("SENT_BACK tim"), after("meg", Role.MENTOR, new SentBack("Say more")));
        assertEquals(signature, afterTim(new Signed(Signatory.ASSIGNEE)));
        assertEquals(List.of(), after("meg", Role.MENTOR, new Signed(Signatory.MENTOR)));
    }

    @Test
    void hold_waitsFromItsFollowUpOn_forWhoeverHasTheTicket() {
        Instant followUp = START.plus(Duration.ofDays(2));
        assertEquals(List.of("FOLLOW_UP tim"), afterTim(new Held(WaitingFor.PART, followUp, "")));
        assertEquals(followUp, waits().get(0).due());
        assertEquals(
                List.of("FOLLOW_UP ann"),
                after("sue", Role.SUPERVISOR, new HandedOver("ann", Set.of(Role.TRAINEE), "")));
        assertEquals(List.of(), after("ann", Role.TRAINEE, new Resumed()));
    }

    @Test
    void offer_waitsForWhoItIsMadeTo() {
        assertEquals(List.of("OFFER ann"), afterTim(new HandOverOffered("ann", "")));
        assertEquals(List.of(), after("ann", Role.TRAINEE, new OfferWithdrawn("No time")));
    }

    @Test
    void soak_waitsWhenTheTimeThatIsAskedForIsOver_countedFromItsStart() {
        afterTim(new SymptomRecorded("Dark", "No picture", true));
        afterTim(new Advanced(), new Advanced(), new Advanced(), new Advanced());
        assertEquals(List.of("SOAK tim"), afterTim(new SoakStarted("")));
        Instant started = START.plusSeconds(sheet.entries());
        Duration asked = Policy.usual().soakTime();
        assertEquals(started.plus(asked), waits().get(0).due());
        assertEquals(List.of("SOAK tim"), afterTim(new SoakRun(60, false, "")));
        assertEquals(started.plus(asked), waits().get(0).due(), "an hour of it has been told");
        assertEquals(List.of(), afterTim(new SoakRun((int) asked.toMinutes() - 60, false, "")));
    }

    @Test
    void soakInWhichItCameBack_waitsForNobody() {
        afterTim(new SymptomRecorded("Dark", "No picture", true));
        afterTim(new Advanced(), new Advanced(), new Advanced(), new Advanced());
        assertEquals(List.of(), afterTim(new SoakStarted(""), new SoakRun(5, true, "")));
    }

    @Test
    void addendumToAClosedTicket_waitsForACountersignature() {
        toDocument();
        afterTim(new Closed());
        assertEquals(
                List.of("ADDENDUM mentors"),
                afterTim(new Addendum(Addendum.About.REMARK, "It was hot")),
                "a trainee's is read by a mentor");
        int addendum = sheet.entries();
        assertEquals(List.of(), after("sue", Role.MENTOR, new AddendumCountersigned(addendum, "")));
    }

    @Test
    void whoHasWorkedOnIt_andWhoHasIt_judgeNothing() {
        afterTim(new SymptomRecorded("Dark", "No picture", false));
        after("sue", Role.SUPERVISOR, new HandedOver("ann", Set.of(Role.TECHNICIAN), ""));
        assertEquals(Set.of("ann", "tim"), Set.copyOf(Waits.hands(sheet)));
    }

    @Test
    void everyKind_hasATitleAndWordsOfItsOwn() {
        assertEquals(
                WaitKind.values().length,
                Arrays.stream(WaitKind.values()).map(WaitKind::title).distinct().count());
    }
}
