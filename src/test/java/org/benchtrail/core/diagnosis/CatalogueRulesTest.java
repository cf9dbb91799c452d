package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CatalogueRulesTest {
    private static final Finding GOOD = Invented.answer("f", 0.2, 1);
    private static final Cause CAUSE = Invented.cause("a", 1, Invented.repair(5, 0.9), Invented.yes("f", 0.8));

    private static CauseCategory of(List<Finding> findings, Cause... causes) {
        return Invented.category(240, findings, List.of(causes));
    }

    private static List<String> fields(CauseCategory... categories) {
        return CatalogueRules.problems(List.of(categories)).stream()
                .map(p -> p.field().replace("categories[0].", ""))
                .distinct()
                .toList();
    }

    private static Finding reading(List<String> values, Map<String, Double> p, @Nullable Limits limits) {
        return new Finding("r", "r?", Finding.Kind.READING, values, p, 1, Risk.NONE, List.of(), null, limits);
    }

    @Test
    void goodCatalogue_hasNoProblems() {
        assertEquals(List.of(), fields(of(List.of(GOOD), CAUSE)));
        assertEquals(75, StarterJson.catalogue().causes());
    }

    @Test
    void everythingWrong_isToldAtOnce() {
        Finding bad = new Finding(
                "f",
                "f?",
                Finding.Kind.ANSWER,
                List.of("no"),
                Map.of("no", 0.7),
                0.4,
                Risk.NONE,
                List.of(new Condition("ghost", List.of("yes"))),
                "nowhere",
                null);
        Cause wrong = new Cause(
                "a",
                "a",
                Double.NaN,
                List.of(Invented.yes("ghost", 0.5), Invented.yes("ghost", 0.5)),
                "look",
                20_000,
                new Repair("r", 0, Double.NaN, 1, -1, Risk.NONE, true, List.of()),
                "");
        CauseCategory c = new CauseCategory(
                "c",
                "c",
                0.1,
                List.of(new Group("g", 1.5)),
                List.of(bad),
                List.of(wrong, CAUSE),
                List.of(new SharedRepair("a", Invented.repair(5, 0.9), Map.of("ghost", 1.0))));
        assertEquals(
                List.of(
                        "escalateMinutes",
                        "groups[0].correlation",
                        "findings[0].values",
                        "findings[0].background",
                        "findings[0].minutes",
                        "findings[0].group",
                        "findings[0].applies[0]",
                        "causes[0].weight",
                        "causes[0].confirmMinutes",
                        "causes[0].repair.minutes",
                        "causes[0].repair.verifyMinutes",
                        "causes[0].repair.partCost",
                        "causes[0].repair.fixProbability",
                        "causes[0].deviations.ghost",
                        "causes[1].id",
                        "causes[1].deviations.f",
                        "sharedRepairs[0].id",
                        "sharedRepairs[0].fixes"),
                fields(c));
        assertThrows(Invalid.class, () -> new Catalogue(List.of(c)));
        assertThrows(Invalid.class, () -> new Model(c, ModelSettings.STANDARD));
    }

    @Test
    void idsUsedTwice_acrossCategories_areRefused() {
        CauseCategory c = of(List.of(GOOD), CAUSE);
        List<String> twice = CatalogueRules.problems(List.of(c, c)).stream()
                .map(Invalid.Problem::field)
                .toList();
        assertEquals(List.of("categories[1].id", "categories[1].findings[0].id", "categories[1].causes[0].id"), twice);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "UNLISTED", "escalate"})
    void blankAndReservedIds_areRefused(String id) {
        assertEquals(List.of("causes[0].id"), fields(of(List.of(), Invented.cause(id, 1, Invented.repair(5, 0.9)))));
    }

    @Test
    void questionsThatWaitForEachOther_areRefused() {
        Finding a = Invented.applies(Invented.answer("x", 0.2, 1), new Condition("y", List.of("yes")));
        Finding b = Invented.applies(Invented.answer("y", 0.2, 1), new Condition("z", List.of("yes")));
        Finding c = Invented.applies(Invented.answer("z", 0.2, 1), new Condition("x", List.of("no")));
        Finding outside = Invented.applies(Invented.answer("w", 0.2, 1), new Condition("x", List.of("no")));
        Cause plain = Invented.cause("a", 1, Invented.repair(5, 0.9));
        assertEquals(
                List.of("findings[0].applies", "findings[1].applies", "findings[2].applies"),
                fields(of(List.of(a, b, c, outside), plain)));
    }

    @Test
    void emptyLists_areRefused() {
        assertEquals(List.of("categories"), fields());
        assertEquals(List.of("causes"), fields(of(List.of(GOOD))));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -0.1, 1.1, Double.NaN})
    void probabilities_lieInsideTheUnitInterval(double p) {
        Cause c = Invented.cause("a", 1, Invented.repair(5, 0.9), Invented.yes("f", p));
        assertTrue(fields(of(List.of(GOOD), c)).contains("causes[0].deviations.f"));
    }

    @Test
    void limits_mustFitTheValues() {
        Cause plain = Invented.cause("a", 1, Invented.repair(5, 0.9));
        Map<String, Double> p = Map.of("inside", 0.9, "below", 0.1);
        List<String> values = List.of("inside", "below");
        assertEquals(
                List.of(), fields(of(List.of(reading(values, p, new Limits("V", 1.0, 2.0, 0, null, null))), plain)));
        assertEquals(
                List.of("findings[0].limits.low"),
                fields(of(List.of(reading(values, p, new Limits("V", 2.0, 2.0, 0, null, null))), plain)));
        assertEquals(
                List.of("findings[0].limits.low"),
                fields(of(List.of(reading(values, p, new Limits("V", null, 2.0, 0, null, null))), plain)));
        assertEquals(
                List.of("findings[0].limits.guard", "findings[0].limits.physicalMin"),
                fields(of(List.of(reading(values, p, new Limits("V", 1.0, 2.0, -1, 5.0, 4.0))), plain)));
        Map<String, Double> reversed = Map.of("below", 0.1, "inside", 0.9);
        assertEquals(
                List.of("findings[0].values"),
                fields(of(List.of(reading(List.of("below", "inside"), reversed, null)), plain)));
    }

    @Test
    void settings_outsideTheirDomain_areRefusedAllAtOnce() {
        Invalid model = assertThrows(Invalid.class, () -> new ModelSettings(0.5, 2, 0.6, 0.2, 0.1, true));
        assertEquals(5, model.problems().size());
        Map<String, Double> endless = Map.of("backup-done", -1.0);
        Invalid plan = assertThrows(
                Invalid.class,
                () -> new PlanSettings(
                        Map.of(Risk.LOW, -1.0), -1, 0, Double.NaN, 2, 0, true, -1, endless, Floor.STANDARD, 0));
        assertEquals(9, plan.problems().size());
        Invalid learning = assertThrows(Invalid.class, () -> new LearningSettings(0, 0, 0, 2, -1, 0));
        assertEquals(6, learning.problems().size());
    }
}
