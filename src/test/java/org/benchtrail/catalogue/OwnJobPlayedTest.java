package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.path.PathCatalogue;
import org.benchtrail.core.practice.Parameter;
import org.benchtrail.core.practice.Stated.Span;
import org.benchtrail.core.practice.desktop.DesktopPart;
import org.benchtrail.core.practice.drive.DrivePart;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.training.OwnJobCheck;
import org.benchtrail.core.training.Ties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

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
        return new OwnJob(
                "text", family, "s", "m", "d", parameters, faults, Map.of(), null, Map.of(), alike);
    }

    private static OwnJobCheck.Result check(OwnJob job) {
        Model model = DELIVERED.model(Ties.of(job.family()).category()).orElseThrow();
        return OwnJobCheck.of(job, model, step -> {});
    }

    /** As long as the slowest takes: every fault of the device, and nothing stated. */
    @ParameterizedTest
    @EnumSource(Family.class)
    void everyFamily_isPlayedInBoundedTime(Family family) {
        Map<String, Map<Parameter, Span>> all = new java.util.LinkedHashMap<>();
        family.faults().forEach(f -> all.put(f, Map.of()));
        long begun = System.nanoTime();
        OwnJobCheck.Result result = check(job(family, Map.of(), all, Set.of()));
        System.out.printf("own job %s: %.1f s%n  %s%n  %s%n", family, (System.nanoTime() - begun) / 1e9, result.refused(), result.told());
        result.faults().forEach(System.out::println);
        result.pairs().forEach(p -> { if (p.deviations() < 6) System.out.println(p); });
        System.out.println(result.harm());
    }
}
