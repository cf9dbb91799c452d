package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.path.PathCatalogue;
import org.benchtrail.core.practice.Parameter;
import org.benchtrail.core.practice.Stated.Span;
import org.benchtrail.core.practice.array.ArrayPart;
import org.benchtrail.core.practice.drive.DrivePart;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.practice.memory.MemoryPart;
import org.benchtrail.core.practice.supply.SupplyPart;
import org.benchtrail.core.training.OwnJobCheck;
import org.benchtrail.core.training.Ties;
import org.junit.jupiter.api.Test;

/** Jobs of mentors, checked with the delivered catalogue. */
@BesideOthers
class OwnJobPlayedTest {
    private static final CatalogueVersion DELIVERED =
            CatalogueVersion.of(1, CatalogueFile.delivered(), PathCatalogue.NONE);

    private static OwnJob job(
            Family family,
            Map<Parameter, Span> parameters,
            Map<String, Map<Parameter, Span>> faults,
            Set<Set<String>> alike) {
        return new OwnJob("text", family, "s", "m", "d", parameters, faults, Map.of(), null, Map.of(), alike);
    }

    private static OwnJobCheck.Result check(OwnJob job) {
        Model model = DELIVERED.model(Ties.of(job.family()).category()).orElseThrow();
        return OwnJobCheck.of(job, model, step -> {});
    }

    private static final Map<Parameter, Span> NOTHING = Map.of();

    private static Span exactly(double value) {
        return new Span(value, value);
    }

    @Test
    void soundJob_isClean_andItsRowsSayWhatItIs() {
        OwnJobCheck.Result result =
                check(job(Family.ARRAY, NOTHING, Map.of("CACHE", Map.of(ArrayPart.CHARGE, exactly(0.1))), Set.of()));
        assertTrue(result.clean(), result.refused()::toString);
        OwnJobCheck.FaultRow row = result.faults().get(0);
        assertEquals(List.of(200, 200, 200, 200), List.of(row.atOnce(), row.drawn(), row.played(), row.mended()));
        assertTrue(row.least() > 0 && row.least() <= row.minutes(), row::toString);
        assertEquals(
                Set.of("MEMBER", "BAY", "CHECKING"),
                result.pairs().stream().map(OwnJobCheck.PairRow::other).collect(Collectors.toSet()));
        assertTrue(result.harm().stream().anyMatch(h -> h.contains("(data")), result.harm()::toString);
    }

    /** The same text is judged alike whenever it is asked for. */
    @Test
    void sameText_isJudgedAlike() {
        OwnJob job = job(Family.MEMORY, NOTHING, Map.of("HEAT", NOTHING), Set.of());
        assertEquals(check(job), check(job));
    }

    /** A battery that holds nearly all of its charge protects the cache: nobody complains. */
    @Test
    void symptomThatSeldomShows_isRefused() {
        OwnJobCheck.Result result =
                check(job(Family.ARRAY, NOTHING, Map.of("CACHE", Map.of(ArrayPart.CHARGE, exactly(0.99))), Set.of()));
        assertEquals(0, result.faults().get(0).atOnce());
        assertTrue(result.refused().get(0).contains("the symptom shows in 0 of 200 first draws; it takes 190"));
    }

    /**
     * Of a number drawn evenly from a span, the share that shows is that of the span beyond the limit: a supply of so many amperes does
     * not carry 300 W times 0.96 at 12 V, which is 24 A.
     */
    @Test
    void shareOfFirstDraws_isThatOfTheSpan() {
        OwnJobCheck.Result result = check(job(
                Family.SUPPLY,
                Map.of(),
                Map.of("DEAD_OUTLET", NOTHING, "SMALL_SUPPLY", Map.of(SupplyPart.MOST_AMPS, new Span(15, 60))),
                Set.of()));
        assertEquals(200, row(result, "DEAD_OUTLET").atOnce());
        int shown = row(result, "SMALL_SUPPLY").atOnce();
        // (24 - 15) / (60 - 15) = 0.2 of the span; within four standard errors of 200 draws
        assertEquals(0.2, shown / 200.0, 4 * Math.sqrt(0.2 * 0.8 / 200));
        assertFalse(result.clean());
    }

    private static OwnJobCheck.FaultRow row(OwnJobCheck.Result result, String fault) {
        return result.faults().stream()
                .filter(r -> r.fault().equals(fault))
                .findFirst()
                .orElseThrow();
    }

    /** By design a cable and a port show the same until one of them is changed. */
    @Test
    void pairThatIsNotToldApart_isRefused_unlessItIsNamedAlike() {
        Map<String, Map<Parameter, Span>> cable = Map.of("DATA_CABLE", Map.of(DrivePart.DAMAGE, exactly(5e-3)));
        OwnJobCheck.Result unnamed = check(job(Family.DRIVE, NOTHING, cable, Set.of()));
        assertEquals(1, unnamed.refused().size(), unnamed.refused()::toString);
        assertTrue(
                unnamed.refused().get(0).startsWith("DATA_CABLE is not told from PORT"), unnamed.refused()::toString);
        OwnJobCheck.Result named = check(job(Family.DRIVE, NOTHING, cable, Set.of(Set.of("DATA_CABLE", "PORT"))));
        assertTrue(named.clean(), named.refused()::toString);
    }

    @Test
    void pairThatIsNamedAlike_andDiffersPlainly_isTold() {
        OwnJobCheck.Result result = check(job(
                Family.ARRAY,
                NOTHING,
                Map.of("CACHE", NOTHING, "CHECKING", NOTHING),
                Set.of(Set.of("CACHE", "CHECKING"))));
        assertTrue(result.clean(), result.refused()::toString);
        assertTrue(result.told().stream().anyMatch(t -> t.contains("are named alike, but '")), result.told()::toString);
    }

    /** What nobody can set right keeps it ill after every repair. */
    @Test
    void deviceThatNoRepairMends_isRefused() {
        OwnJobCheck.Result result = check(job(
                Family.MEMORY,
                Map.of(MemoryPart.WEAK, exactly(0.1)),
                Map.of("MODULE", NOTHING),
                Set.of(Set.of("MODULE", "SLOT"))));
        assertTrue(
                result.refused().stream().anyMatch(r -> r.contains("no repair that this device has mends")),
                result.refused()::toString);
    }

    @Test
    void progress_goesUpToTheEnd() {
        List<Integer> steps = new ArrayList<>();
        OwnJob job = job(Family.ARRAY, NOTHING, Map.of("CACHE", NOTHING), Set.of());
        OwnJobCheck.of(job, DELIVERED.model("array").orElseThrow(), steps::add);
        assertEquals(steps.stream().sorted().toList(), steps);
        assertEquals(OwnJobCheck.STEPS, steps.get(steps.size() - 1));
    }
}
