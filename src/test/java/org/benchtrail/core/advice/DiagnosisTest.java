package org.benchtrail.core.advice;

import static org.benchtrail.core.advice.HeatSheet.MODEL;
import static org.benchtrail.core.advice.HeatSheet.answer;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.RankedCause;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the sheet makes of its causes, how that is recorded, and what a repair still waits for. */
class DiagnosisTest {
    private static Diagnosis diagnosis(Fact... facts) {
        return Diagnosis.of(new HeatSheet().with(facts).sheet(), MODEL);
    }

    private static List<String> waitsFor(String cause, Diagnosis diagnosis) {
        return diagnosis.advice().blocked().stream()
                .filter(blocked -> blocked.repair().equals(cause))
                .flatMap(blocked -> blocked.reasons().stream())
                .toList();
    }

    @Test
    void evidence_isWhatBearsOnTheCauses() {
        assertFalse(diagnosis().hasEvidence());
        assertFalse(diagnosis(answer("smell", "yes")).hasEvidence());
        Diagnosis dusty = diagnosis(answer("dust", "yes"));
        assertTrue(dusty.hasEvidence());
        assertEquals(1, dusty.evidence().reports().size());
        assertEquals(MODEL.category().causes(), dusty.model().category().causes());
        assertEquals(Optional.of("Board"), dusty.cause("H2").map(Cause::name));
        assertEquals(Optional.empty(), dusty.cause(Model.UNLISTED));
    }

    @Test
    void ranking_isRecordedInItsOrder_withFourDigitsAndTheVersion() {
        JobSheet sheet = new HeatSheet()
                .with(answer("noise", "yes"), answer("dust", "no"))
                .sheet();
        Diagnosis noisy = Diagnosis.of(sheet, MODEL);
        TheoriesRanked recorded = noisy.recorded(sheet, 7, "figures from memory");
        assertEquals("catalogue version 7, figures from memory", recorded.basis());
        assertEquals(7, recorded.catalogue());
        List<RankedCause> causes = Optional.ofNullable(recorded.causes()).orElseThrow();
        assertEquals(5, causes.size());
        assertEquals("Board", causes.get(0).name());
        assertEquals(
                noisy.ranking().all().stream()
                        .map(r -> r.cause() + " " + Math.round(r.probability() * 10_000))
                        .toList(),
                causes.stream()
                        .map(c -> c.causeId() + " " + Math.round(Double.parseDouble(c.probability()) * 10_000))
                        .toList());
        assertTrue(causes.stream().allMatch(c -> c.probability().matches("[01]\\.\\d{4}")), causes.toString());
        assertEquals(
                List.of("something not listed"),
                causes.stream()
                        .filter(c -> c.causeId().equals(Model.UNLISTED))
                        .map(RankedCause::name)
                        .toList());
    }

    @ParameterizedTest
    @EnumSource
    void repairThatNeedsABackup_waitsForOne_orForNoDataToLose(DataState state) {
        assertTrue(waitsFor("H2", diagnosis()).contains("first: backup done"));
        boolean safe = state.backedUp() || state == DataState.NO_USER_DATA;
        List<String> waits = waitsFor("H2", diagnosis(new DataAnswered(state, "Encrypted")));
        // where no copy can be made, the owner's word opens what may destroy data
        assertEquals(state == DataState.IMPOSSIBLE, waits.contains("first: loss accepted"));
        assertEquals(!safe && state != DataState.IMPOSSIBLE, waits.contains("first: backup done"));
    }

    @Test
    void repairThatNeedsAnApprovedChange_waitsForTheApproval() {
        assertEquals(List.of("first: change approved"), waitsFor("H3", diagnosis()));
        assertEquals(List.of(), waitsFor("H3", diagnosis(new PlanApproved(List.of(1), ""))));
    }

    @Test
    void standingHazard_isAllThatIsAdvised() {
        Map<Hazard, Boolean> smoke = new EnumMap<>(Hazard.class);
        for (Hazard hazard : Hazard.values()) {
            smoke.put(hazard, hazard == Hazard.SMOKE);
        }
        Diagnosis stopped = diagnosis(new HazardsScreened(smoke));
        assertEquals(Set.of("stop-work"), stopped.advice().hazards());
        assertEquals(List.of(), stopped.advice().actions());
        Diagnosis cleared = diagnosis(new HazardsScreened(smoke), new StopWorkCleared("Unplugged and aired", true));
        assertEquals(Set.of(), cleared.advice().hazards());
        assertEquals(List.of(), waitsFor("H4", cleared));
        assertFalse(cleared.advice().actions().isEmpty());
    }

    private static Diagnosis checked(@Nullable String causeId, CheckOutcome outcome) {
        return diagnosis(
                new TheoryStated("Board", causeId),
                new TheoryChosen(2, "", ""),
                new CheckPlanned(2, "Look", "It shows", false, Set.of()),
                new ResultRecorded(4, "It shows", outcome, null));
    }

    @Test
    void graveRepair_waitsUntilACheckBearsItsCauseOut() {
        String confirm = "confirm it first: look, about 1 min";
        assertTrue(waitsFor("H2", diagnosis()).contains(confirm));
        assertTrue(waitsFor("H2", checked("H2", CheckOutcome.INCONCLUSIVE)).contains(confirm));
        assertTrue(waitsFor("H2", checked("H1", CheckOutcome.SUPPORTS)).contains(confirm));
        assertTrue(waitsFor("H2", checked(null, CheckOutcome.SUPPORTS)).contains(confirm));
        assertFalse(waitsFor("H2", checked("H2", CheckOutcome.SUPPORTS)).contains(confirm));
    }
}
