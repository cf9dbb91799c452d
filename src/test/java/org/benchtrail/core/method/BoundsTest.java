package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The first and the last number that a fact takes, the words of every choice, and what the opening says for good. */
class BoundsTest {
    private static final int YEAR = 525_600;

    static Stream<Arguments> ranges() {
        return Stream.of(
                range("minutes", 1, YEAR, n -> new SoakRun(n, false, "")),
                range("minutes", 1, YEAR, n -> new SoakTimeReckoned(n, "Log of a year")),
                range("minutes", 1, 100_000, n -> new EffortRecorded(n, "")),
                range("tries", 0, 1_000, n -> new RequesterAnswered(RequesterState.AGREES, n, "")),
                range("tries", 1, 1_000, n -> new RequesterAnswered(RequesterState.NOT_REACHED, n, "")));
    }

    private static Arguments range(String field, int first, int last, IntFunction<Fact> made) {
        return Arguments.of(field, first, last, made);
    }

    @ParameterizedTest
    @MethodSource("ranges")
    void numbers_areTakenFromTheFirstToTheLast(String field, int first, int last, IntFunction<Fact> made) {
        assertDoesNotThrow(() -> made.apply(first));
        assertDoesNotThrow(() -> made.apply(last));
        for (int beyond : new int[] {first - 1, last + 1}) {
            Invalid e = assertThrows(Invalid.class, () -> made.apply(beyond));
            assertEquals(
                    List.of(field),
                    e.problems().stream().map(Problem::field).distinct().toList());
        }
    }

    @Test
    void fileAndList_areTakenUpToTheirLast() {
        long most = 1L << 53;
        assertEquals(most, new AttachmentAdded("a", "b", most, "0".repeat(64), "c").bytes());
        assertEquals(1, new AttachmentAdded("a", "b", 1, "0".repeat(64), "c").bytes());
        assertEquals(
                200,
                new LikenessChecked(Collections.nCopies(200, "40718-6")).shown().size());
    }

    @Test
    void followUp_liesWithinTenYears() {
        TicketFixture desk = plain();
        Held late = new Held(WaitingFor.SUPPLIER, tenYearsAfterTheAct(desk).plusSeconds(1), "");
        Invalid e = assertThrows(Invalid.class, () -> desk.as(INES).does(late));
        assertEquals("followUp", e.problems().get(0).field());
        desk.as(INES).records(new Held(WaitingFor.SUPPLIER, tenYearsAfterTheAct(desk), ""));
    }

    /** The fixture's clock goes on by one minute with every act. */
    private static Instant tenYearsAfterTheAct(TicketFixture desk) {
        return desk.now().plusSeconds(60).plus(Duration.ofDays(3_653));
    }

    @Test
    void knownCause_isNamedWhereTheTicketConfirmsOne() {
        assertEquals(7L, new KnowledgeLinked(Lesson.CONFIRMED, "", 7L).known());
        for (Lesson lesson : List.of(Lesson.PROPOSED, Lesson.NOTHING)) {
            Invalid e = assertThrows(Invalid.class, () -> new KnowledgeLinked(lesson, "A common cause", 7L));
            assertEquals("known", e.problems().get(0).field());
        }
    }

    @Test
    void summary_isWrittenBeforeItIsSigned() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        Invalid e = assertThrows(Invalid.class, () -> desk.as(INES).does(new Signed(Signatory.ASSIGNEE)));
        assertEquals("summary", e.problems().get(0).field());
        desk.as(INES).records(anySummary());
        desk.as(OLE).lacks("not-yours", new Signed(Signatory.ASSIGNEE));
        desk.as(INES).records(new Signed(Signatory.ASSIGNEE));
    }

    @Test
    void refusal_saysWhatIsMissing() {
        assertThrows(IllegalArgumentException.class, () -> new Decision.Refused(List.of(), true));
    }

    @Test
    void afterDocument_comesNoStep() {
        assertEquals(Step.DOCUMENT, Step.VERIFY.next());
        assertThrows(IllegalStateException.class, Step.DOCUMENT::next);
    }

    // ---- the words of choices

    private static <E extends Enum<E>> void areAllWorded(Class<E> choice, Function<E, String> words) {
        List<String> all = Arrays.stream(choice.getEnumConstants()).map(words).toList();
        assertFalse(all.stream().anyMatch(String::isBlank), choice + ": " + all);
        assertEquals(all.size(), Set.copyOf(all).size(), choice + ": " + all);
    }

    @Test
    void everyChoice_hasWordsOfItsOwn() {
        areAllWorded(ChangeKind.class, ChangeKind::words);
        areAllWorded(DataState.class, DataState::words);
        areAllWorded(Hazard.class, Hazard::words);
        areAllWorded(Scope.class, Scope::words);
        areAllWorded(Obvious.class, Obvious::words);
        areAllWorded(CheckOutcome.class, CheckOutcome::words);
        areAllWorded(Fit.class, Fit::words);
        areAllWorded(Settlement.class, Settlement::words);
        areAllWorded(RequesterState.class, RequesterState::words);
        areAllWorded(Lesson.class, Lesson::words);
        areAllWorded(Sureness.class, Sureness::words);
        areAllWorded(WaitingFor.class, WaitingFor::words);
        areAllWorded(AskKind.class, AskKind::words);
        areAllWorded(Addendum.About.class, Addendum.About::words);
        areAllWorded(Move.class, Move::words);
        areAllWorded(Channel.class, Channel::words);
        areAllWorded(Priority.class, Priority::words);
        areAllWorded(Priority.Impact.class, Priority.Impact::words);
        areAllWorded(Priority.Urgency.class, Priority.Urgency::words);
        areAllWorded(Step.class, Step::title);
        areAllWorded(Step.class, Step::question);
        areAllWorded(Caution.class, Caution::title);
        areAllWorded(Caution.class, Caution::text);
        areAllWorded(Caution.class, Caution::advice);
        areAllWorded(Category.class, Category::title);
        areAllWorded(Category.class, category -> category.functions().toString());
    }

    @Test
    void priority_isDueInWholeHours() {
        assertEquals(
                List.of(4, 8, 72, 240),
                Arrays.stream(Priority.values()).map(Priority::hours).toList());
    }

    @Test
    void everyCategoryButTheLast_hasAPartOfTheCatalogueOfItsOwn() {
        List<String> parts = Arrays.stream(Category.values())
                .filter(category -> category != Category.OTHER)
                .map(Category::catalogue)
                .toList();
        assertFalse(parts.contains(""));
        assertEquals(parts.size(), Set.copyOf(parts).size());
        assertEquals("", Category.OTHER.catalogue());
    }

    // ---- who works, and what the opening says for good

    @Test
    void everyRoleButTheAdministrators_worksOnTickets() {
        for (Role role : Role.values()) {
            assertEquals(role != Role.ADMINISTRATOR, new Actor("x", "X", Set.of(role)).works(), role.name());
        }
    }

    private static Opened opening(String ticket, long requester, @Nullable String assignee, Set<Role> roles) {
        return new Opened(
                ticket,
                "Switches off",
                "",
                Category.HEAT,
                "Workstation",
                "Office",
                requester,
                Priority.Impact.SEVERAL,
                Priority.Urgency.CAN_WAIT,
                assignee,
                roles);
    }

    @Test
    void numberRequesterAndHands_areEachKept() {
        TicketFixture desk = plain();
        for (Opened other : List.of(
                opening("40719-4", 17, "ines", INES.roles()),
                opening("40718-6", 18, "ines", INES.roles()),
                opening("40718-6", 17, "ole", INES.roles()),
                opening("40718-6", 17, null, INES.roles()),
                opening("40718-6", 17, "ines", MAREK.roles()))) {
            desk.as(SUE).lacks("not-correctable", new Corrected(1, "A slip", other));
        }
        desk.as(INES).records(new Corrected(1, "A slip", opening("40718-6", 17, "ines", INES.roles())));
        assertEquals(Priority.THIS_WEEK, desk.sheet().opened().priority());
    }

    @Test
    void caution_isAcknowledgedForSomethingThatIsThere() {
        TicketFixture desk = plain();
        Invalid e = assertThrows(
                Invalid.class, () -> desk.as(INES).does(new CautionsAcknowledged(99, Set.of(Caution.MAINS))));
        assertEquals("about", e.problems().get(0).field());
    }

    @Test
    void sheet_isToldFromAnotherByWhatStandsOnIt() {
        TicketFixture desk = plain();
        JobSheet before = desk.sheet();
        desk.as(INES).records(anySymptom(false));
        assertNotEquals(before, desk.sheet());
        assertNotEquals(before.hashCode(), desk.sheet().hashCode());
        assertNotEquals(before, new Object());
        assertEquals(before, JobSheet.replay(desk.trail().subList(0, 1)));
        assertTrue(desk.sheet().toString().contains("2 entries"), desk.sheet().toString());
    }
}
