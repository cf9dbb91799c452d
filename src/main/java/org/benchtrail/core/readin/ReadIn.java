package org.benchtrail.core.readin;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.measure.Series;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.jspecify.annotations.Nullable;

/**
 * What was found. Nothing of it is recorded yet: these are the facts that would be, so that they can be looked at first.
 *
 * @param readings in the order of the source, each with the device's own limits where it tells any
 * @param findings what the device says about itself, or what its values amount to
 * @param skipped what was there and did not become a reading, each with the reason
 * @param samples the whole of a series; null for the other kinds
 */
public record ReadIn(
        Kind kind,
        List<ReadingRecorded> readings,
        List<FindingRecorded> findings,
        List<String> skipped,
        @Nullable Series samples) {
    public ReadIn {
        readings = List.copyOf(readings);
        findings = List.copyOf(findings);
        skipped = List.copyOf(skipped);
    }

    public Optional<Series> series() {
        return Optional.ofNullable(samples);
    }
}
