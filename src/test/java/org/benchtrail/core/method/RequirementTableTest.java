package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The table in code against the written method: codes, order, step, and the column of what may be waived. */
class RequirementTableTest {
    private static final List<String> WRITTEN = List.of(
            "IDENTIFY symptom-observed -",
            "IDENTIFY onset-known -",
            "IDENTIFY changes-asked W",
            "IDENTIFY scope-known -",
            "IDENTIFY reproduced W",
            "IDENTIFY hazards-screened -",
            "IDENTIFY data-protected W",
            "IDENTIFY evidence-attached W",
            "IDENTIFY logs-reviewed W",
            "IDENTIFY likeness-checked -",
            "THEORIZE simple-things-first W",
            "THEORIZE theory-stated -",
            "THEORIZE theory-chosen -",
            "THEORIZE not-already-refuted W",
            "TEST expectation-first -",
            "TEST result-recorded -",
            "TEST theory-supported -",
            "TEST invasive-guarded -",
            "PLAN action-planned -",
            "PLAN maker-consulted W",
            "PLAN parts-fit W",
            "PLAN plan-approved -",
            "PLAN cautions-taken -",
            "PLAN data-still-protected W",
            "PLAN actions-settled -",
            "VERIFY symptoms-gone -",
            "VERIFY readings-back W",
            "VERIFY function-checked W",
            "VERIFY requester-agrees W",
            "VERIFY prevention-considered -",
            "VERIFY soak-time-passed W",
            "DOCUMENT cause-named -",
            "DOCUMENT summary-written -",
            "DOCUMENT knowledge-linked W",
            "DOCUMENT effort-recorded W",
            "DOCUMENT mentor-signed -");

    @Test
    void tableAgreesWithTheWrittenMethod() {
        List<String> coded = Requirements.all().stream()
                .map(r -> r.step() + " " + r.code() + (r.waivable() ? " W" : " -"))
                .toList();
        assertEquals(
                String.join("\n", WRITTEN),
                String.join("\n", coded),
                "what the step asks for stands in WRITTEN, in the order of the table");
    }

    /** A walk would come to one that is left out by chance alone. */
    @Test
    void theMethodWrittenASecondTime_letsTheSameBeWaived() {
        assertEquals(
                Requirements.all().stream()
                        .filter(Requirement::waivable)
                        .map(Requirement::code)
                        .collect(Collectors.toSet()),
                TrailOracle.WAIVABLE,
                "say in TrailOracle which may be waived");
    }

    @Test
    void everyCodeLeadsBackToItsRequirement() {
        for (Requirement requirement : Requirements.all()) {
            assertEquals(Optional.of(requirement), Requirements.of(requirement.code()));
            assertFalse(requirement.title().isBlank());
        }
        assertEquals(Optional.empty(), Requirements.of("no-such-code"));
    }

    @Test
    void everyStepHasAGateInTheOrderOfTheTable() {
        for (Step step : Step.values()) {
            List<Requirement> gate = Requirements.of(step);
            assertFalse(gate.isEmpty());
            assertEquals(gate.stream().sorted().toList(), gate);
        }
        assertEquals(
                List.of(1, 2, 3, 4, 5, 6),
                Arrays.stream(Step.values()).map(Step::place).toList());
    }
}
