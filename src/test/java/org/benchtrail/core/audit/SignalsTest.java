package org.benchtrail.core.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchtrail.core.Published;
import org.benchtrail.core.audit.SignalWorth.Standing;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.site.WorkCalendar;
import org.benchtrail.core.site.WorkingTime;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What the papers of a ticket ask, at, under and over each number of the rules, and what that has been worth. */
class SignalsTest {
    private static final String WILSON = "Wilson's interval for a share (NIST/SEMATECH e-Handbook 7.2.4.1), recomputed";
    private static final Instant BEGINS = Instant.parse("2026-11-01T00:00:00Z");
    private static final Instant ENDS = BEGINS.plus(Duration.ofHours(101));
    private static final WorkingTime ALWAYS = WorkingTime.by(WorkCalendar.ROUND_THE_CLOCK);
    private static final String LONG = "The fan hums at start";

    /** The papers of a ticket as they grow. */
    private static final class Papers {
        private final List<Entry> trail = new ArrayList<>();
        private Instant now = BEGINS.plusSeconds(3600);
        private final String by;

        Papers(String by) {
            this.by = by;
            add(new Opened(
                    "40718-6",
                    "Too loud",
                    "",
                    Category.OTHER,
                    "Workstation",
                    "Hall",
                    1,
                    Priority.Impact.ONE_PERSON,
                    Priority.Urgency.CAN_WAIT,
                    by,
                    Set.of()));
        }

        Papers add(Fact fact) {
            return add(fact, by);
        }

        Papers add(Fact fact, String person) {
            trail.add(new Entry(new Stamp(trail.size() + 1, now, person, Set.of()), fact));
            return this;
        }

        Papers after(Duration time) {
            now = now.plus(time);
            return this;
        }

        Papers at(Instant moment) {
            now = moment;
            return this;
        }

        /** To that step by moves a day apart. */
        Papers steps(int many) {
            for (int i = 0; i < many; i++) {
                after(Duration.ofDays(1)).add(new Advanced());
            }
            return this;
        }
    }

    private static Papers papers() {
        return new Papers("ines");
    }

    private static List<Signal> signals(Papers... lot) {
        return signals(SignalNumbers.USUAL, lot);
    }

    private static List<Signal> signals(SignalNumbers numbers, Papers... lot) {
        LotSignals signals =
                new LotSignals(finding -> finding.equals("slow") ? 2.1 : finding.equals("quick") ? 2 : 0, numbers);
        for (int i = 0; i < lot.length; i++) {
            signals.add(signals.trace(String.valueOf(i), JobSheet.replay(lot[i].trail), lot[i].trail));
        }
        return signals.all(BEGINS, ENDS, ALWAYS);
    }

    private static boolean shows(SignalKind kind, Papers... lot) {
        return signals(lot).stream().anyMatch(s -> s.kind() == kind);
    }

    private static Papers symptom(String observable) {
        return papers().add(new SymptomRecorded(LONG, observable, false));
    }

    /** Each number that a site sets is the one that counts, in the rule and in the sentence beside it. */
    @Test
    void aSitesOwnNumbers_count_andAreTheOnesInTheSentence() {
        SignalNumbers own = new SignalNumbers(
                10,
                2,
                4,
                9,
                Duration.ofSeconds(5),
                Duration.ofMinutes(3),
                6,
                Duration.ofSeconds(90),
                Duration.ofMinutes(30),
                Duration.ofSeconds(45),
                4);
        assertTrue(signals(symptom("ab cd efghijkl")).stream().anyMatch(s -> s.kind() == SignalKind.SHORT_TEXT));
        assertTrue(signals(own, symptom("ab cd efghijkl")).isEmpty(), "14 characters, 3 words");
        assertTrue(signals(own, symptom("ab cd ef")).stream().anyMatch(s -> s.kind() == SignalKind.SHORT_TEXT));
        String all =
                Stream.of(SignalKind.values()).map(kind -> kind.question(own)).collect(Collectors.joining(" "));
        for (String number : List.of(
                "10 characters",
                "2 different words",
                "on 4 tickets",
                "or 9 of them",
                "Less than 5 s",
                "more than 3 min",
                "6 facts",
                "within 90 s",
                "more than 30 min after",
                "within 45 s",
                "than 4 times")) {
            assertTrue(all.contains(number), number + " in " + all);
        }
        assertThrows(
                IllegalArgumentException.class,
                () -> new SignalNumbers(
                        15, 3, 1, 8, Duration.ZERO, Duration.ZERO, 5, Duration.ZERO, Duration.ZERO, Duration.ZERO, 3));
    }

    @Test
    void shortText_underFifteenCharacters_orThreeDifferentWords() {
        assertTrue(shows(SignalKind.SHORT_TEXT, symptom("ab cd efghijkl")));
        assertFalse(shows(SignalKind.SHORT_TEXT, symptom("ab cd efghijklm")));
        assertTrue(shows(SignalKind.SHORT_TEXT, symptom("humming Humming, humming loudly")));
        assertFalse(shows(SignalKind.SHORT_TEXT, symptom("humming humming very loudly")));
        assertEquals("entry 2", signals(symptom("Loud")).get(0).detail());
        assertFalse(
                shows(SignalKind.SHORT_TEXT, papers().add(new TheoryStated("Dust", null))), "a theory may be one word");
    }

    /** What is made from the answer to a check's question was not asked for. */
    @Test
    void shortText_besideAnAnswer_isNone() {
        assertTrue(shows(SignalKind.SHORT_TEXT, result(null)));
        assertFalse(shows(SignalKind.SHORT_TEXT, result("yes")));
    }

    private static Papers result(@Nullable String answer) {
        return papers().add(new ResultRecorded(2, "loose: yes", CheckOutcome.SUPPORTS, null, answer, null));
    }

    @Test
    void repeatedText_onThreeTicketsByTheSamePerson_inAnyCaseAndBlanks() {
        Papers[] three = {symptom("It hums at start"), symptom("it  HUMS at start "), symptom("It hums at start")};
        three[0] = new Papers("ines").add(new SymptomRecorded("One own word here", "It hums at start", false));
        three[1] = new Papers("ines").add(new SymptomRecorded("Two own words here", "it  HUMS at start", false));
        three[2] = new Papers("ines").add(new SymptomRecorded("Three own words here", "It hums at start", false));
        assertEquals(
                3,
                signals(three).stream()
                        .filter(s -> s.kind() == SignalKind.REPEATED_TEXT)
                        .count());
        assertFalse(shows(SignalKind.REPEATED_TEXT, three[0], three[1]));
        Papers other = new Papers("ole").add(new SymptomRecorded("Four own words here", "It hums at start", false));
        assertFalse(shows(SignalKind.REPEATED_TEXT, three[0], three[1], other));
    }

    @Test
    void repeatedText_ofEightWordsInARow_inAnotherSummary() {
        Papers summary = papers().add(new SummaryWritten(
                "We found one two three four five six seven eight of them",
                "Cleaned the fan out",
                "It runs well again"));
        Papers eight = symptom("There: One two three four five six seven EIGHT!");
        Papers seven = symptom("There: one two three four five six seven nine");
        assertTrue(shows(SignalKind.REPEATED_TEXT, summary, eight));
        assertFalse(shows(SignalKind.REPEATED_TEXT, summary, seven));
        assertFalse(shows(SignalKind.REPEATED_TEXT, summary), "not its own summary");
        assertTrue(shows(SignalKind.REPEATED_TEXT, summary, summary), "two that are alike show it both");
    }

    private static ReadingRecorded reading(String value, String point) {
        return new ReadingRecorded("voltage", value, "V", point, "", null, null, "", null, null, null);
    }

    private static Papers measured(String before, String after) {
        return papers().add(reading(before, "outlet"))
                .add(new ActionSettled(1, Settlement.CARRIED_OUT, "Done as it was planned"))
                .add(reading(after, "outlet"));
    }

    @Test
    void value_equalInAllDigits_whereTheLastIsWorthLessThanAHundredth() {
        assertTrue(shows(SignalKind.VALUE_TO_THE_DIGIT, measured("10.1", "10.1")));
        assertFalse(shows(SignalKind.VALUE_TO_THE_DIGIT, measured("10.0", "10.0")), "0.1 is a hundredth");
        assertTrue(shows(SignalKind.VALUE_TO_THE_DIGIT, measured("-10.1", "-10.1")));
        assertFalse(shows(SignalKind.VALUE_TO_THE_DIGIT, measured("0", "0")));
        assertFalse(shows(SignalKind.VALUE_TO_THE_DIGIT, measured("230.1", "230.2")));
        assertFalse(
                shows(
                        SignalKind.VALUE_TO_THE_DIGIT,
                        papers().add(reading("230.1", "outlet")).add(reading("230.1", "outlet"))),
                "nothing was repaired between them");
        Papers elsewhere = papers().add(reading("230.1", "outlet"))
                .add(new ActionSettled(1, Settlement.CARRIED_OUT, "Done as it was planned"))
                .add(reading("230.1", "plug"));
        assertFalse(shows(SignalKind.VALUE_TO_THE_DIGIT, elsewhere), "another point");
    }

    private static Papers later(boolean repaired, String value) {
        Papers papers = new Papers("ole").after(Duration.ofDays(1));
        if (repaired) {
            papers.add(new ActionSettled(1, Settlement.CARRIED_OUT, "Done as it was planned"));
        }
        return papers.add(reading(value, "outlet"));
    }

    @Test
    void value_asOnAnEarlierTicket_fromThreeDigits() {
        Papers past = papers().add(reading("231", "outlet")).add(reading("99", "outlet"));
        Papers three = measured("120", "231").after(Duration.ofDays(1));
        assertTrue(shows(SignalKind.VALUE_TO_THE_DIGIT, past, later(true, "231")));
        assertFalse(shows(SignalKind.VALUE_TO_THE_DIGIT, past, later(true, "99")));
        assertFalse(shows(SignalKind.VALUE_TO_THE_DIGIT, past, later(false, "231")), "nothing was repaired");
        assertFalse(shows(SignalKind.VALUE_TO_THE_DIGIT, past, three), "at the same moment none is the earlier one");
    }

    private static Papers checked(String finding, Duration between) {
        return papers().add(new CheckPlanned(
                        1, "Measure it under load", "It drops below twelve volts", false, Set.of(), finding, null))
                .after(between)
                .add(new ResultRecorded(2, "It dropped to eleven volts", CheckOutcome.SUPPORTS, null));
    }

    @Test
    void expectation_underTwentySecondsBeforeItsResult_ofACheckThatTakesOverTwoMinutes() {
        SignalKind kind = SignalKind.EXPECTATION_JUST_BEFORE;
        assertTrue(shows(kind, checked("slow", Duration.ofMillis(19_999))));
        assertFalse(shows(kind, checked("slow", Duration.ofSeconds(20))));
        assertFalse(shows(kind, checked("quick", Duration.ofSeconds(5))), "two minutes are not over two minutes");
        assertFalse(shows(kind, checked(null, Duration.ofSeconds(5))), "nobody knows how long it takes");
        assertEquals(
                "entries 2 and 3",
                signals(checked("slow", Duration.ZERO)).get(0).detail());
    }

    private static Papers theories(int many, Duration since, Duration apart) {
        Papers papers = papers().steps(1).after(since);
        for (int i = 0; i < many; i++) {
            papers.add(new TheoryStated("Theory of number " + i, null));
            papers.after(apart);
        }
        return papers.add(new Cancelled("Taken away", null));
    }

    @Test
    void batch_ofFiveWithinAMinute_overAnHourAfterTheStepBefore() {
        SignalKind kind = SignalKind.BATCH_ENTRY;
        Duration late = Duration.ofHours(1).plusMillis(1);
        assertTrue(shows(kind, theories(5, late, Duration.ofSeconds(15))));
        assertFalse(shows(kind, theories(5, late, Duration.ofMillis(15_001))), "over a minute");
        assertFalse(shows(kind, theories(4, late, Duration.ZERO)));
        assertFalse(shows(kind, theories(5, Duration.ofHours(1), Duration.ZERO)), "an hour, and no more");
        Papers first = papers().after(Duration.ofHours(5));
        IntStream.range(0, 5).forEach(i -> first.add(new SymptomRecorded(LONG, "It hums in the hall " + i, false)));
        first.steps(1);
        assertFalse(shows(kind, first), "no step was before it");
    }

    @Test
    void batch_thatTheServerWrote_isNone() {
        Papers papers = papers().steps(1).after(Duration.ofHours(2));
        IntStream.range(0, 5).forEach(i -> papers.add(new TheoryStated("Theory " + i, null), Stamp.SERVER));
        papers.steps(1);
        assertFalse(shows(SignalKind.BATCH_ENTRY, papers));
    }

    private static Papers leaving(Duration after, Fact how) {
        return papers().steps(1).after(after).add(how);
    }

    @Test
    void step_leftWithinThirtySeconds() {
        SignalKind kind = SignalKind.LEFT_AT_ONCE;
        assertTrue(shows(kind, leaving(Duration.ofSeconds(30), new Advanced())));
        assertFalse(shows(kind, leaving(Duration.ofMillis(30_001), new Advanced())));
        assertFalse(shows(kind, leaving(Duration.ofSeconds(1), new Cancelled("Not ours", null))), "it only ended");
        assertFalse(shows(kind, papers().add(new Advanced())), "nobody entered the first one");
        Papers again = papers().steps(5)
                .after(Duration.ofDays(1))
                .add(new Closed())
                .after(Duration.ofDays(1))
                .add(new Reopened("It is back"))
                .add(new Advanced());
        assertFalse(shows(kind, again), "what was opened again waited for somebody");
    }

    private static Papers repaired(Fact... after) {
        Papers papers = papers().add(reading("230", "outlet"))
                .steps(3)
                .add(new ActionSettled(1, Settlement.CARRIED_OUT, "Done as it was planned"));
        Arrays.stream(after).forEach(papers::add);
        return papers.steps(2).after(Duration.ofDays(1)).add(new Closed());
    }

    @Test
    void nothingNew_afterTheLastAction() {
        SignalKind kind = SignalKind.NO_NEW_EVIDENCE;
        assertTrue(shows(kind, repaired()));
        assertFalse(shows(kind, repaired(reading("231", "outlet"))));
        assertFalse(shows(
                kind,
                repaired(new AttachmentAdded(
                        "after.png", "image/png", 10, "0".repeat(64), "The light is green", null, null))));
        assertFalse(shows(kind, repaired(new ResultRecorded(2, "It held for an hour", CheckOutcome.SUPPORTS, null))));
        Papers unchanged = papers().steps(3)
                .add(new ActionSettled(1, Settlement.NOT_NEEDED, "It was not needed"))
                .steps(2)
                .add(new Closed());
        assertFalse(shows(kind, unchanged), "nothing was changed");
        Papers cancelled = papers().steps(3)
                .add(new ActionSettled(1, Settlement.CARRIED_OUT, "Done as it was planned"))
                .add(new Cancelled("Taken away", null));
        assertFalse(shows(kind, cancelled));
    }

    private static Papers[] closed(int late, int usual) {
        return IntStream.range(0, late + usual)
                .mapToObj(
                        i -> papers().at(i < late ? ENDS.minus(Duration.ofHours(1)) : BEGINS.plus(Duration.ofHours(2)))
                                .add(new Closed()))
                .toArray(Papers[]::new);
    }

    /** 101 hours are worked: 100 before the last one. */
    @Test
    void closed_inTheLastWorkingHour_overThreeTimesTheUsual() {
        SignalKind kind = SignalKind.END_OF_PERIOD;
        assertTrue(shows(kind, closed(2, 66)), "2 against 3 times 0.66");
        assertFalse(shows(kind, closed(3, 100)), "3 against 3 times 1");
        assertTrue(shows(kind, closed(4, 100)));
        assertTrue(shows(kind, closed(2, 0)));
        assertFalse(shows(kind, closed(1, 0)), "one is no rate");
        Papers[] early = closed(2, 0);
        early[0] = papers().at(ENDS.minus(Duration.ofHours(1)).minusMillis(1)).add(new Closed());
        assertFalse(shows(kind, early), "an hour and a moment before");
        assertEquals(
                4,
                signals(closed(4, 100)).stream().filter(s -> s.kind() == kind).count());
    }

    @Test
    void noSignal_holdsWhatSomebodyWrote_orWho() {
        Papers[] all = {
            symptom("Secretword"), symptom("Secretword"), symptom("Secretword"), repaired(), measured("10.1", "10.1")
        };
        List<Signal> signals = signals(all);
        assertTrue(signals.size() >= 8);
        for (Signal signal : signals) {
            assertFalse(signal.detail().contains("ecretword") || signal.detail().contains("ines"), signal.detail());
        }
    }

    @Test
    void everyKind_isAboutRequirementsThatThereAre() {
        for (SignalKind kind : SignalKind.values()) {
            kind.requirements().forEach(code -> assertTrue(Requirements.of(code).isPresent(), code));
            assertTrue(kind.question(SignalNumbers.USUAL).endsWith("?"), kind.title());
        }
        assertTrue(SignalKind.VALUE_TO_THE_DIGIT.isAbout("readings-back"));
        assertFalse(SignalKind.VALUE_TO_THE_DIGIT.isAbout("cause-named"));
        assertTrue(SignalKind.LEFT_AT_ONCE.isAbout("cause-named"));
    }

    @Test
    void worth_tellsWhereItsIntervalLiesAboveTheBase() {
        SignalWorth tells = new SignalWorth(9, 20, 3, 40);
        Published.check(WILSON, 0.258198, tells.precision().lower(), 5e-7);
        Published.check(WILSON, 0.657915, tells.precision().upper(), 5e-7);
        Published.check(WILSON, 0.025836, tells.without().lower(), 5e-7);
        Published.check(WILSON, 0.198642, tells.without().upper(), 5e-7);
        assertEquals(Standing.TELLS, tells.standing());
        SignalWorth overlaps = new SignalWorth(9, 30, 3, 40);
        Published.check(WILSON, 0.166647, overlaps.precision().lower(), 5e-7);
        Published.check(WILSON, 0.478758, overlaps.precision().upper(), 5e-7);
        assertEquals(Standing.TELLS_NOTHING, overlaps.standing());
        assertEquals(Standing.TELLS_NOTHING, new SignalWorth(0, 20, 40, 40).standing(), "below is not above");
    }

    /** A good share of few says nothing, whichever side the few are on. */
    @Test
    void worth_isNotKnown_underTwentyOfEither() {
        assertEquals(Standing.NOT_YET_KNOWN, new SignalWorth(19, 19, 0, 400).standing());
        assertEquals(Standing.NOT_YET_KNOWN, new SignalWorth(400, 400, 0, 19).standing());
        assertEquals(Standing.NOT_YET_KNOWN, SignalWorth.NONE.standing());
        assertEquals(Standing.TELLS, new SignalWorth(20, 20, 0, 20).standing());
    }
}
