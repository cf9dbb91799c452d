package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.WorkMark;
import org.benchtrail.core.statistics.Proportion;
import org.benchtrail.core.training.CoachChoices.Choice;
import org.benchtrail.core.training.CoachEvent.CriticalMiss;
import org.benchtrail.core.training.CoachEvent.NearMiss;
import org.benchtrail.core.training.CoachEvent.Occasion;
import org.benchtrail.core.training.WorkJudged.Judgement;
import org.junit.jupiter.api.Test;

class WorkJudgedTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    private static final Instant LATER = START.plus(Duration.ofDays(20));

    private static final Choice SAID = new Choice("scope-known", CoachLevel.SILENT, START);

    private final List<Entry> entries = new ArrayList<>();

    private Instant at(int entry) {
        return START.plus(Duration.ofHours(entry));
    }

    private void add(String by, Role role, Fact fact) {
        int entry = entries.size() + 1;
        entries.add(new Entry(new Stamp(entry, at(entry), by, Set.of(role)), fact));
    }

    private void own(Fact fact) {
        add("kim", Role.TRAINEE, fact);
    }

    private Map<String, List<CoachEvent>> read(Judgement... judged) {
        return WorkJudged.of(entries, "kim", List.of(judged), new CoachChoices(List.of()));
    }

    private static Judgement satisfied(String code) {
        return new Judgement(code, LATER, true, false);
    }

    private static Judgement faulty(String code) {
        return new Judgement(code, LATER, false, false);
    }

    private void passesAll() {
        for (int step = 0; step < 5; step++) {
            own(new Advanced());
        }
        own(new Closed());
    }

    /** Of a test of the coach: what was never come to counts as not met, so that stopping early gains nothing. */
    @Test
    void firstTries_countWhatWasMissed_untrueOrNeverComeTo() {
        int all = CoachTrial.JUDGED.size();
        assertEquals(new Proportion(0, all), WorkJudged.firstTries(entries, "kim", Set.of()));
        own(new Refused("advanced", List.of("scope-known")));
        own(new Advanced());
        assertEquals(new Proportion(6, all), WorkJudged.firstTries(entries, "kim", Set.of()), "seven of identify");
        assertEquals(new Proportion(5, all), WorkJudged.firstTries(entries, "kim", Set.of("data-protected")));
        entries.clear();
        passesAll();
        assertEquals(new Proportion(all, all), WorkJudged.firstTries(entries, "kim", Set.of()));
        assertEquals(new Proportion(all - 1, all), WorkJudged.firstTries(entries, "kim", Set.of("cause-named")));
        assertEquals(new Proportion(0, all), WorkJudged.firstTries(entries, "lee", Set.of()), "nobody else's");
    }

    /** Whoever writes anything at all, as long as the gate takes it, is not coached less for it. */
    @Test
    void emptyRecords_thatNobodyLookedAt_fadeNothing() {
        List<CoachEvent> all = new ArrayList<>();
        for (int job = 0; job < 200; job++) {
            entries.clear();
            passesAll();
            read().values().forEach(all::addAll);
        }
        assertEquals(List.of(), all);
        assertEquals(CoachStanding.START, CoachStanding.of(all, false, START, LATER, CoachLevel.MET));
    }

    @Test
    void whatWasLeftAtTheFirstTry_andFoundSatisfied_isASuccess_ofWhenItWasWorked() {
        passesAll();
        assertEquals(
                Map.of("scope-known", List.of(new Occasion(LATER, at(1), true, null))), read(satisfied("scope-known")));
        assertEquals(
                Map.of("cause-named", List.of(new Occasion(LATER, at(6), true, null))), read(satisfied("cause-named")));
    }

    @Test
    void whatWasRefusedFirst_isAMiss_whateverIsSaidOfItLater_once() {
        own(new Refused("advanced", List.of("scope-known", "forecast-first")));
        own(new Refused("advanced", List.of("scope-known")));
        own(new Advanced());
        assertEquals(
                Map.of("scope-known", List.of(new Occasion(at(1), at(1), false, null))),
                read(satisfied("scope-known")));
        assertEquals(
                Map.of("scope-known", List.of(new Occasion(at(1), at(1), false, null))), read(faulty("scope-known")));
    }

    @Test
    void whatWasFoundWanting_isAMiss_andCriticalWhereItCouldHaveHarmed() {
        passesAll();
        assertEquals(
                Map.of("scope-known", List.of(new Occasion(LATER, at(1), false, null))), read(faulty("scope-known")));
        assertEquals(
                Map.of("data-protected", List.of(new CriticalMiss(LATER))),
                read(new Judgement("data-protected", LATER, false, true)));
    }

    /** A step that somebody else left says nothing of whoever has the ticket now. */
    @Test
    void theWorkOfAnother_isNotCounted() {
        add("lee", Role.TECHNICIAN, new Advanced());
        add("lee", Role.TECHNICIAN, new Refused("advanced", List.of("theory-stated")));
        own(new Advanced());
        assertEquals(Map.of(), read(satisfied("scope-known"), faulty("onset-known")));
        assertEquals(
                List.of(new Occasion(LATER, at(3), true, null)),
                read(satisfied("theory-stated")).get("theory-stated"));
    }

    @Test
    void anActRefusedForSafety_isANearMiss_notAMissOfTheGate() {
        own(new Refused("action-settled", List.of("cautions-taken", "action-planned")));
        assertEquals(Map.of("cautions-taken", List.of(new NearMiss(at(1)))), read());
        assertTrue(read(satisfied("cautions-taken")).get("cautions-taken").size() == 1, "the step was not left yet");
    }

    /** A remark alone may be praise; sent back by the same mentor it is not. */
    @Test
    void whatAMentorRemarkedOn_andSentBack_isAMiss() {
        for (int step = 0; step < 5; step++) {
            own(new Advanced());
        }
        add("mo", Role.MENTOR, new Remarked(null, "readings-back", "Measured at five minutes."));
        add("may", Role.MENTOR, new Remarked(null, "scope-known", "Well asked."));
        add("kim", Role.MENTOR, new Remarked(null, "onset-known", "My own words."));
        assertEquals(Map.of(), read());
        add("mo", Role.MENTOR, new SentBack("See the remark."));
        add("mo", Role.MENTOR, new SentBack("Again."));
        own(new Closed());
        assertEquals(Map.of("readings-back", List.of(new Occasion(at(9), at(5), false, null))), read());
    }

    private static Remarked marked(String code, WorkMark mark) {
        return new Remarked(null, code, "Looked at.", mark);
    }

    /** Opened and marked by a mentor: an occasion like any other that somebody looked at. */
    @Test
    void whatAMentorMarked_isJudged_theLastMarkStands_andTheStricterOfTwoWhoLooked() {
        own(new Advanced());
        add("mo", Role.MENTOR, marked("scope-known", WorkMark.SATISFIED));
        assertEquals(Map.of("scope-known", List.of(new Occasion(at(2), at(1), true, null))), read());
        assertEquals(
                Map.of("scope-known", List.of(new Occasion(LATER, at(1), false, null))), read(faulty("scope-known")));
        add("mo", Role.MENTOR, marked("scope-known", WorkMark.NOT_SATISFIED));
        assertEquals(Map.of("scope-known", List.of(new Occasion(at(3), at(1), false, null))), read());
        assertEquals(
                Map.of("scope-known", List.of(new Occasion(at(3), at(1), false, null))),
                read(satisfied("scope-known")));
        add("mo", Role.MENTOR, marked("scope-known", WorkMark.SATISFIED));
        assertEquals(Map.of("scope-known", List.of(new Occasion(at(4), at(1), true, null))), read());
    }

    /** Not what is said before the work is tried, by oneself, by who is no mentor, or without a mark. */
    @Test
    void whatIsNoMark_ofAMentor_afterTheTry_fadesNothing() {
        add("mo", Role.MENTOR, marked("scope-known", WorkMark.SATISFIED));
        own(new Advanced());
        add("kim", Role.MENTOR, marked("onset-known", WorkMark.SATISFIED));
        add("sue", Role.SUPERVISOR, marked("reproduced", WorkMark.SATISFIED));
        add("mo", Role.MENTOR, new Remarked(null, "logs-reviewed", "Well read."));
        add("mo", Role.MENTOR, marked("theory-stated", WorkMark.SATISFIED));
        assertEquals(Map.of(), read());
    }

    /** What was marked satisfied is not what the same mentor sends back for. */
    @Test
    void whatIsMarkedSatisfied_isNoMissOfWhatIsSentBack() {
        own(new Advanced());
        add("mo", Role.MENTOR, marked("scope-known", WorkMark.SATISFIED));
        add("mo", Role.MENTOR, new Remarked(null, "onset-known", "Since when?"));
        add("mo", Role.MENTOR, new SentBack("See the remark."));
        assertEquals(
                Map.of(
                        "scope-known", List.of(new Occasion(at(2), at(1), true, null)),
                        "onset-known", List.of(new Occasion(at(4), at(1), false, null))),
                read());
    }

    @Test
    void aTicketThatIsOpenedAgain_isACriticalMiss_ofWhoDeclaredItsSymptomGone() {
        passesAll();
        add("sue", Role.SUPERVISOR, new Reopened("It came back"));
        assertEquals(Map.of("symptoms-gone", List.of(new CriticalMiss(at(7)))), read());
        // once for each time that it was declared gone
        add("sue", Role.SUPERVISOR, new Reopened("And again"));
        assertEquals(1, read().get("symptoms-gone").size());
        passesAll();
        add("sue", Role.SUPERVISOR, new Reopened("Once more"));
        assertEquals(2, read().get("symptoms-gone").size());
    }

    @Test
    void aTicketWhoseSymptomAnotherDeclaredGone_saysNothing() {
        for (int step = 0; step < 4; step++) {
            own(new Advanced());
        }
        add("lee", Role.TECHNICIAN, new Advanced());
        own(new Closed());
        add("sue", Role.SUPERVISOR, new Reopened("It came back"));
        assertEquals(Map.of(), read());
    }

    @Test
    void whatWasChosenThen_isKeptWithIt() {
        passesAll();
        Map<String, List<CoachEvent>> read = WorkJudged.of(
                entries,
                "kim",
                List.of(satisfied("scope-known")),
                new CoachChoices(List.of(SAID, new Choice("", CoachLevel.EXAMPLE, at(2)))));
        assertEquals(Map.of("scope-known", List.of(new Occasion(LATER, at(1), true, SAID))), read);
    }

    @Test
    void kinds_areThoseThatAreRead() {
        assertTrue(WorkJudged.kinds()
                .containsAll(
                        Set.of("advanced", "closed", "refused", "remarked", "sent-back", "reopened", "ruled-out")));
    }
}
