package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.BenchFigure;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.PictureMarked;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a fact answers to those who know it only as a fact: what a server adds, what it says of causes, what may be put right. */
class FactAnswersTest {
    private static final String SHA = "a".repeat(64);

    private static final ServerKnowledge SERVER = new ServerKnowledge() {
        @Override
        public Actor worker(String account) {
            return person(account);
        }

        @Override
        public int fileSize(String sha256) {
            return 4_711;
        }

        @Override
        public Policy policy() {
            Policy usual = Policy.usual();
            return new Policy(
                    usual.approvalCostLimit(),
                    usual.dataAnswerMaxAge(),
                    usual.soakTime(),
                    usual.reopenWindow(),
                    new BigDecimal("1.5"));
        }

        @Override
        public void requireOriginal(String ticket) {
            if (ticket.equals("40719-4")) {
                throw new Invalid("duplicateOf", "That one is a duplicate itself.");
            }
        }

        @Override
        public Category category() {
            return Category.OTHER;
        }

        @Override
        public Set<Caution> cautionsOfFinding(String finding) {
            return Set.of();
        }

        @Override
        public Optional<Limit> limitOf(String finding) {
            return Optional.empty();
        }

        @Override
        public Set<Caution> cautionsOfRepair() {
            return Set.of();
        }
    };

    private static final BenchResultAttached CALCULATED = new BenchResultAttached(
            "run-time", 1, "Run time", "{}", Result.Level.GOOD, "Long enough", "20 min of 15 min", List.of());

    private static ReadingRecorded rail(@Nullable String accuracy, @Nullable String finding) {
        return new ReadingRecorded(
                "voltage", "11.8", "V", "plug", "meter", "11.4", "12.6", "label", accuracy, null, finding);
    }

    // ---- what a server adds

    @Test
    void attachment_isAsLargeAsTheFileThatIsKept() {
        AttachmentAdded told = new AttachmentAdded("fan.png", "image/png", 9, SHA, "The fan");
        assertEquals(new AttachmentAdded("fan.png", "image/png", 4_711, SHA, "The fan"), told.completedBy(SERVER));
    }

    @Test
    void handOver_carriesTheRolesThatTheTakerHas() {
        assertEquals(
                new HandedOver("marek", MAREK.roles(), "Yours"),
                new HandedOver("marek", Set.of(), "Yours").completedBy(SERVER));
    }

    @Test
    void reading_isGuardedAsPolicyAsks_ifItsAccuracyIsKnown() {
        assertEquals(rail("1 %", null).guarded("1.5"), rail("1 %", null).completedBy(SERVER));
        assertEquals("1.5", ((ReadingRecorded) rail("1 %", null).completedBy(SERVER)).guard());
        assertEquals(rail(null, null), rail(null, null).completedBy(SERVER));
    }

    @Test
    void action_raisesTheCautionsOfItsWordsAndItsPart_besidesItsOwn() {
        ActionPlanned action = action(false, false, false, false, null, "UPS batteries", Caution.LASER);
        Set<Caution> cautions = ((ActionPlanned) action.completedBy(SERVER)).cautions();
        assertTrue(cautions.containsAll(Set.of(Caution.LASER, Caution.HEAT, Caution.BATTERY)), cautions.toString());
    }

    @Test
    void invasiveCheck_raisesTheCautionsOfItsWords_besidesItsOwn() {
        CheckPlanned check = new CheckPlanned(
                1, "Open the power supply", "Burnt", true, Set.of(Caution.STATIC), "supply.burnt", null);
        CheckPlanned completed = (CheckPlanned) check.completedBy(SERVER);
        assertTrue(
                completed.cautions().containsAll(Set.of(Caution.STATIC, Caution.CAPACITOR)),
                completed.cautions().toString());
        assertEquals("supply.burnt", completed.finding());
    }

    @Test
    void correction_isCompletedByWhatStandsInPlace() {
        assertEquals(
                new Corrected(2, "Misread", rail("1 %", null).guarded("1.5")),
                new Corrected(2, "Misread", rail("1 %", null)).completedBy(SERVER));
        Corrected strike = new Corrected(2, "Misread", null);
        assertEquals(strike, strike.completedBy(SERVER));
    }

    @Test
    void duplicate_isOfATicketThatTheServerTakesForAnOriginal() {
        Cancelled ofADuplicate = new Cancelled("The same", "40719-4");
        assertThrows(Invalid.class, () -> ofADuplicate.completedBy(SERVER));
        for (Cancelled fine : List.of(new Cancelled("The same", "40718-6"), new Cancelled("Withdrawn", null))) {
            assertEquals(fine, fine.completedBy(SERVER));
        }
    }

    @Test
    void otherFacts_stayAsTheyWereTold() {
        assertEquals(anySymptom(false), anySymptom(false).completedBy(SERVER));
    }

    @Test
    void onlyAChoice_restsOnTheRankingOfThatMoment() {
        assertTrue(choose(1).restsOnRanking());
        assertFalse(theory("Dust").restsOnRanking());
    }

    @Test
    void whatOnlyTheServerFills_isNamedToWhoeverPostsIt() {
        assertEquals(Set.of("kind"), FactKinds.serverOnly(CALCULATED).keySet());
        assertEquals(
                Map.of("kind", "The server itself records 'soak-time-reckoned'."),
                FactKinds.serverOnly(new SoakTimeReckoned(60, "Log of a year")));
        List<RankedCause> causes = List.of(new RankedCause("heat.dust", "Dust", "0.4000"));
        assertEquals(
                Map.of("causes", "The server ranks the causes of the catalogue: leave this out."),
                FactKinds.serverOnly(new TheoriesRanked(List.of(1), "judgement", causes, 1)));
        assertEquals(Map.of(), FactKinds.serverOnly(new TheoriesRanked(List.of(1), "judgement")));
        assertEquals(Map.of(), FactKinds.serverOnly(anySymptom(false)));
    }

    // ---- what it says of the causes, and what it tells later technicians

    private static Optional<CatalogueAnswer> says(Fact fact, TicketFixture desk) {
        return fact.says(desk.sheet());
    }

    @Test
    void answerToAFinding_isSaid() {
        FindingAnswered answered = new FindingAnswered("fan.turns", "Does the fan turn?", "no", Source.SEEN);
        assertEquals(Optional.of(new CatalogueAnswer("fan.turns", "no", Source.SEEN, null)), says(answered, plain()));
        assertEquals(Optional.empty(), says(anySymptom(false), plain()));
        assertEquals(Optional.empty(), says(drive(true), plain()));
    }

    @Test
    void reading_isSaidToItsFinding_asCalibratedIfItsAccuracyIsKnown() {
        ReadingRecorded seen = rail(null, "rail.low");
        assertEquals(Optional.of(new CatalogueAnswer("rail.low", "", Source.SEEN, seen)), says(seen, plain()));
        ReadingRecorded metered = rail("1 %", "rail.low");
        assertEquals(
                Optional.of(new CatalogueAnswer("rail.low", "", Source.CALIBRATED, metered)), says(metered, plain()));
        assertEquals(Optional.empty(), says(rail("1 %", null), plain()));
    }

    @Test
    void resultOfACheck_answersTheFindingOfThatCheck() {
        TicketFixture desk = atStep(Step.TEST);
        int theory = desk.latest(TheoryStated.class);
        int asked = desk.as(INES)
                .records(new CheckPlanned(theory, "Look", "It stands", false, Set.of(), "fan.turns", null));
        int other = desk.as(INES)
                .records(new CheckPlanned(theory, "Look", "It is dry", false, Set.of(), "paste.dry", null));
        int plain = desk.as(INES).records(check(theory));
        assertEquals(
                Optional.of(new CatalogueAnswer("fan.turns", "no", Source.SEEN, null)),
                says(answering(asked, "no"), desk));
        assertEquals(
                Optional.of(new CatalogueAnswer("paste.dry", "yes", Source.SEEN, null)),
                says(answering(other, "yes"), desk));
        assertEquals(Optional.empty(), says(answering(plain, "no"), desk));
        assertEquals(Optional.empty(), says(result(asked, CheckOutcome.SUPPORTS), desk));
        assertEquals(Optional.empty(), says(answering(999, "no"), desk));
    }

    private static ResultRecorded answering(int check, String answer) {
        return new ResultRecorded(check, "Seen", CheckOutcome.SUPPORTS, null, answer, null);
    }

    @Test
    void story_isWhatWasSeenAndWhatWasDone() {
        assertEquals(
                List.of("It dies on me", "Screen goes dark, fans stop"),
                anySymptom(false).story());
        assertEquals(
                List.of("Dust", "Cleaned", "Runs cool"), new SummaryWritten("Dust", "Cleaned", "Runs cool").story());
        assertEquals(List.of(), anyAction().story());
    }

    @Test
    void carriedOut_changesTheDevice_whatIsNotNeededDoesNot() {
        assertTrue(settled(1, Settlement.CARRIED_OUT).changesDevice());
        assertFalse(settled(1, Settlement.NOT_NEEDED).changesDevice());
        assertFalse(anyAction().changesDevice());
    }

    @Test
    void evidence_isShownWhereTheProblemIsIdentified() {
        assertEquals(Step.IDENTIFY, temperature("60", "processor").shownUnder());
        assertEquals(Step.THEORIZE, theory("Dust").shownUnder());
    }

    // ---- what it names, and where it stands in the record

    static Stream<Arguments> named() {
        Fact picture = new PictureMarked(9, MarkKind.CIRCLE, 1, 2, 3, 4, "Bent");
        return Stream.of(
                Arguments.of(picture, List.of(new Reference(9, AttachmentAdded.class, "picture"))),
                Arguments.of(new Corrected(5, "A slip", null), List.of(new Reference(5, Fact.class, "entry"))),
                Arguments.of(
                        new PresenceEnded(61, true, "All"),
                        List.of(new Reference(61, PresenceSigned.class, "presence"))),
                Arguments.of(new PresenceSigned(23, "tom"), List.of(new Reference(23, Fact.class, "about"))));
    }

    @ParameterizedTest
    @MethodSource("named")
    void entriesThatItNames_areLookedUp(Fact fact, List<Reference> references) {
        assertEquals(references, fact.references());
    }

    @Test
    void resultsEntries_areItsCheck_andItsReadingIfItHasOne() {
        List<String> alone = new ResultRecorded(4, "Low", CheckOutcome.SUPPORTS, null)
                .references().stream().map(Reference::field).toList();
        List<String> measured = new ResultRecorded(4, "Low", CheckOutcome.SUPPORTS, 7)
                .references().stream().map(Reference::field).toList();
        assertEquals(List.of("check"), alone);
        assertEquals(List.of("check", "reading"), measured);
    }

    @Test
    void onlyARankingByTheCatalogue_tellsRanking() {
        assertTrue(new TheoriesRanked(List.of(), "catalogue", List.of(new RankedCause("h", "Dust", "0.4")), 1)
                .tellsRanking());
        assertFalse(new TheoriesRanked(List.of(1), "judgement").tellsRanking());
    }

    @Test
    void moveThroughTheGate_standsAsASignature_anEntrysRemarkAtItsEntry() {
        JobSheet sheet = atStep(Step.TEST).sheet();
        assertEquals(RecordPlace.SIGNATURE, new Advanced().placeIn(sheet));
        assertEquals(RecordPlace.LINE, new Reopened("Back").placeIn(sheet));
        assertEquals(RecordPlace.AT_ENTRY, new Remarked(2, null, "Why?", null).placeIn(sheet));
        assertEquals(RecordPlace.LINE, new Remarked(null, "onset-known", "Why?", null).placeIn(sheet));
    }

    // ---- how long an answer counts

    @Test
    void answersOfVerify_countUntilTheNextWork() {
        TicketFixture desk = atStep(Step.VERIFY);
        meetAll(desk);
        assertTrue(desk.sheet().inForce(RequesterAnswered.class).isPresent());
        assertTrue(desk.sheet().inForce(FunctionChecked.class).isPresent());
        desk.as(INES).records(new VerifyFailed("It is back"));
        assertEquals(Optional.empty(), desk.sheet().inForce(RequesterAnswered.class));
        assertEquals(Optional.empty(), desk.sheet().inForce(FunctionChecked.class));
        assertTrue(desk.sheet().inForce(SymptomRecorded.class).isPresent());
        assertTrue(desk.sheet().inForce(ObviousQuestioned.class).isPresent());
        assertEquals(Optional.empty(), desk.sheet().inForce(TheoryChosen.class));
    }

    // ---- what may be put right

    @Test
    void whatWasWrittenDown_isReplacedOrStruck() {
        TicketFixture desk = atStep(Step.DOCUMENT);
        for (Fact written : List.of(
                new ExtractRecorded("System log", "Out of paper"),
                new AttachmentAdded("fan.png", "image/png", 9, SHA, "The fan"),
                new FindingAnswered("fan.turns", "Does the fan turn?", "no", Source.SEEN),
                new FindingRecorded("The filter is grey", false),
                new EffortRecorded(45, ""))) {
            int entry = desk.as(INES).records(written);
            int correction = desk.as(INES).records(new Corrected(entry, "A slip", written));
            StandingFact<Fact> now = desk.sheet().at(entry, Fact.class, "entry");
            assertNotNull(now.corrected());
            assertEquals(correction, now.corrected().entry());
            desk.as(INES).records(new Corrected(entry, "Not so", null));
            assertThrows(Invalid.class, () -> desk.sheet().at(entry, Fact.class, "entry"));
        }
    }

    @Test
    void calculated_isStruckAndCalculatedAgain_notReplaced() {
        TicketFixture desk = plain();
        for (Fact calculated : List.of(CALCULATED, new SoakTimeReckoned(60, "Log of a year"))) {
            int entry = desk.as(INES).records(calculated);
            Invalid e =
                    assertThrows(Invalid.class, () -> desk.as(INES).does(new Corrected(entry, "A slip", calculated)));
            assertEquals("replacement", e.problems().get(0).field());
            desk.as(INES).records(new Corrected(entry, "Wrong input", null));
            assertThrows(Invalid.class, () -> desk.sheet().at(entry, Fact.class, "entry"));
        }
    }

    @Test
    void calculatedResult_isEvidence_aFindingIsNot() {
        TicketFixture desk = plain();
        desk.as(INES).records(drive(false));
        assertTrue(desk.missing().contains("evidence-attached"));
        desk.as(INES).records(CALCULATED);
        assertFalse(desk.missing().contains("evidence-attached"));
    }

    @Test
    void calculatedResult_keepsItsFigures() {
        List<BenchFigure> figures = List.of(new BenchFigure("Run time", "20", "min"));
        BenchResultAttached result = new BenchResultAttached(
                "run-time", 1, "Run time", "{}", Result.Level.GOOD, "Long enough", "20 min of 15 min", figures);
        assertEquals(figures, result.figures());
    }

    @Test
    void agreement_namesTheCorrectionThatItIsTo() {
        assertEquals(
                List.of(new Reference(7, Fact.class, "correction")), new LesseningAgreed(7, "It is so").references());
    }

    @Test
    void kinds_areFoundByTheirStableNames() {
        assertEquals(ReadingRecorded.class, FactKinds.all().get("reading-recorded"));
        FactKinds.all().forEach((name, kind) -> assertEquals(name, FactKinds.name(kind)));
    }

    @Test
    void requirementThatIsNone_isRefusedOnItsField() {
        Invalid e = assertThrows(Invalid.class, () -> plain().as(SUE).does(new Waived("unheard-of", "Why not")));
        assertEquals("requirement", e.problems().get(0).field());
    }

    @Test
    void onlyTheCataloguesRanking_isTheServersWord() {
        List<RankedCause> causes = List.of(new RankedCause("heat.dust", "Dust", "0.4000"));
        assertTrue(new TheoriesRanked(List.of(), "catalogue", causes, 1).saidByServer());
        assertFalse(new TheoriesRanked(List.of(1), "judgement").saidByServer());
        assertTrue(new SoakTimeReckoned(60, "Log of a year").saidByServer());
    }
}
