package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.ForecastCommitted;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.ForecastSkipped;
import org.benchtrail.core.method.desk.HandOverOffered;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Held;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.OfferWithdrawn;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.Returned;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.WaitingFor;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.LossAccepted;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.PictureMarked;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every field of every fact is checked: a text for its length, what is asked for whether it was answered. */
class FactFieldsTest {
    private static final String TOO_LONG = "x".repeat(1_000_001);

    /** Hold a number, an account or a word that nobody types; what is typed of a report is checked where a ticket is opened. */
    private static final Set<Class<? extends Fact>> BY_THE_SERVER = Set.of(Opened.class, Refused.class);

    /** A fact that is in order, and those of its texts that may be left out. */
    private static Arguments fact(Fact sound, String... optional) {
        return Arguments.of(sound, Set.of(optional));
    }

    static Stream<Arguments> facts() {
        return Stream.of(identify(), theorizeAndTest(), plan(), verifyAndDocument(), desk())
                .flatMap(facts -> facts);
    }

    private static Stream<Arguments> identify() {
        return Stream.of(
                fact(anySymptom(false)),
                fact(new OnsetRecorded(false, ""), "when"),
                fact(anyChanges(), "note"),
                fact(new ScopeRecorded(Scope.ONE, ""), "note"),
                fact(new ReproductionTried(Reproduction.YES, "Ran it")),
                fact(cleared()),
                fact(new LossAccepted("The firm", "By telephone")),
                fact(data(DataState.TAKEN_NOW), "note"),
                fact(new LogsReviewed(true, "Nothing")),
                fact(drive(true)),
                fact(new EvidenceImpossible("The device is gone")),
                fact(new ExtractRecorded("System log", "Out of paper")),
                fact(
                        new AttachmentAdded(
                                "fan.png",
                                "image/png",
                                9,
                                "a".repeat(64),
                                "The fan",
                                Instant.parse("2026-11-26T10:00:00Z"),
                                "4032 x 3024"),
                        "scaledFrom"),
                fact(new PictureMarked(2, MarkKind.TEXT, 10, 20, 10, 20, "Bulged")),
                fact(new FindingAnswered("fan.turns", "Does the fan turn?", "no", Source.SEEN)),
                fact(new SoakTimeReckoned(60, "Three times the mean time between failures")),
                fact(new BenchResultAttached(
                        "soak", 1, "Soak time", "{}", Result.Level.GOOD, "An hour", "Three times 20 min", List.of())),
                fact(
                        new ReadingRecorded(
                                "voltage", "11.8", "V", "plug", "meter", "11.4", null, "label", "1 %", "2", "rail.12v"),
                        "instrument",
                        "lower",
                        "upper",
                        "accuracy",
                        "guard",
                        "finding"));
    }

    private static Stream<Arguments> theorizeAndTest() {
        return Stream.of(
                fact(anyObvious(), "note"),
                fact(theory("Dust"), "causeId"),
                fact(new TheoriesRanked(List.of(2), "judgement"), "recommended", "favoured"),
                fact(choose(2), "reason", "newEvidence"),
                fact(check(2), "expectation", "finding"),
                fact(result(2, CheckOutcome.SUPPORTS), "answer", "against"));
    }

    private static Stream<Arguments> plan() {
        return Stream.of(
                fact(anyAction(), "cost", "part", "against"),
                fact(demandingAction(), "wayBack", "cost", "part", "against"),
                fact(new MakerConsulted(true, "Service manual")),
                fact(new PartFitChecked(2, Fit.FITS, "Same socket")),
                fact(new PartOverrideApproved(2, "Filed to size")),
                fact(new PlanApproved(List.of(2), ""), "note"),
                fact(new PlanDeclined("Too dear")),
                fact(carriedOut(2), "note"));
    }

    private static Stream<Arguments> verifyAndDocument() {
        return Stream.of(
                fact(new SymptomRechecked(2, true, "Ran it")),
                fact(new FunctionChecked(Map.of("Starts from cold", ItemState.WORKS), ""), "note"),
                fact(requester(RequesterState.AGREES, 0), "note"),
                fact(new PreventionConsidered(true, "Clean it")),
                fact(new SoakStarted(""), "note"),
                fact(new SoakRun(60, false, ""), "note"),
                fact(new CauseNamed("Dust", null, Sureness.MEASURED), "causeId"),
                fact(anySummary()),
                fact(new KnowledgeLinked(Lesson.NOTHING, "Common")),
                fact(new KnowledgeLinked(Lesson.CONFIRMED, "", 7L), "text"),
                fact(new EffortRecorded(45, ""), "parts"),
                fact(new Signed(Signatory.MENTOR)));
    }

    private static Stream<Arguments> desk() {
        return Stream.of(
                fact(new Addendum(Addendum.About.CAUSE, "It was the paste"), "requirement"),
                fact(new AddendumCountersigned(2, ""), "note"),
                fact(new Asked(AskKind.WAIVER, "logs-reviewed", "No logs there")),
                fact(new Asked(AskKind.APPROVAL, null, ""), "requirement", "note"),
                fact(new HandOverOffered("ole", ""), "note"),
                fact(new LesseningAgreed(2, "Misread indeed")),
                fact(new OfferWithdrawn(""), "note"),
                fact(new Remarked(2, null, "Which fan?"), "requirement", "mark"),
                fact(new SentBack("The part is missing")),
                fact(new ForecastCommitted(ForecastKind.CAUSES, null, 1, "ab".repeat(32)), "about", "finding"),
                fact(new ForecastSkipped(ForecastKind.CAUSES, "tom", "Urgent")),
                fact(new PresenceSigned(2, "tom"), "trainee"),
                fact(new PresenceEnded(2, true, "Cord pulled first")),
                fact(new Cancelled("Withdrawn", null), "duplicateOf"),
                fact(new Corrected(2, "Misheard", null)),
                fact(new Escalated("The maker", "All of it")),
                fact(new HandedOver("ole", Set.of(Role.TECHNICIAN), ""), "note"),
                fact(new Held(WaitingFor.PART, Instant.EPOCH, ""), "note"),
                fact(new Reopened("It is back")),
                fact(new Rethought("The screw broke", false)),
                fact(new Returned("A new board")),
                fact(new VerifyFailed("It is back")),
                fact(new Waived("onset-known", "Nobody knows")));
    }

    private static Fact with(Fact fact, RecordComponent changed, @Nullable Object value) {
        RecordComponent[] components = fact.getClass().getRecordComponents();
        Object[] values = Arrays.stream(components)
                .map(c -> c.getName().equals(changed.getName()) ? value : FactKinds.value(fact, c))
                .toArray();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        try {
            return (Fact) fact.getClass().getDeclaredConstructor(types).newInstance(values);
        } catch (InvocationTargetException e) {
            throw (RuntimeException) e.getCause();
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }

    private static void isRefused(Fact fact, RecordComponent changed, @Nullable Object value) {
        Invalid e = assertThrows(Invalid.class, () -> with(fact, changed, value), fact + ", " + changed.getName());
        assertTrue(
                e.problems().stream().map(Problem::field).anyMatch(changed.getName()::equals),
                fact + ", " + changed.getName() + ": " + e.problems());
    }

    private static List<RecordComponent> components(Fact fact, Predicate<Class<?>> type) {
        return Arrays.stream(fact.getClass().getRecordComponents())
                .filter(c -> type.test(c.getType()))
                .toList();
    }

    /** A kind that is forgotten here is checked by nothing below. */
    @Test
    void everyKindWithATextOrAChoice_isAmongThem() {
        Set<Class<?>> here = facts().map(f -> f.get()[0].getClass()).collect(Collectors.toSet());
        assertEquals(
                List.of(),
                FactKinds.all().values().stream()
                        .filter(kind -> Arrays.stream(kind.getRecordComponents())
                                .map(RecordComponent::getType)
                                .anyMatch(type -> type == String.class || type.isEnum()))
                        .filter(kind -> !here.contains(kind) && !BY_THE_SERVER.contains(kind))
                        .toList(),
                "give them a row in facts()");
    }

    @ParameterizedTest
    @MethodSource("facts")
    void textThatIsTooLong_isRefusedOnItsField(Fact fact) {
        components(fact, String.class::equals).forEach(text -> isRefused(fact, text, TOO_LONG));
    }

    @ParameterizedTest
    @MethodSource("facts")
    void whatIsAskedFor_isNotLeftOut(Fact fact, Set<String> optional) {
        for (RecordComponent text : components(fact, String.class::equals)) {
            if (optional.contains(text.getName())) {
                assertEquals(fact.getClass(), with(fact, text, " ").getClass());
            } else {
                isRefused(fact, text, " ");
            }
        }
        components(fact, Class::isEnum).stream()
                .filter(choice -> !optional.contains(choice.getName()))
                .forEach(choice -> isRefused(fact, choice, null));
    }
}
