package org.benchtrail.training;

import java.math.BigDecimal;
import java.util.Optional;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.practice.job.Answer;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Seen;
import org.benchtrail.core.training.Ties;
import org.jspecify.annotations.Nullable;

/** What an act on a practice device puts on the sheet: the same facts that somebody records of a real one. */
final class DeviceFacts {
    private DeviceFacts() {}

    static Fact of(Family family, DeviceAct act, Answer answer, Optional<CauseCategory> category) {
        Seen seen = answer.seen();
        Optional<Finding> asked =
                Ties.of(family).finding(act).flatMap(id -> category.flatMap(c -> SheetEvidence.finding(c, id)));
        if (seen != null && seen.gauge() != null) {
            return reading(seen, seen.gauge(), asked);
        }
        return seen != null && asked.isPresent()
                ? new FindingAnswered(asked.get().id(), asked.get().label(), seen.value(), source(act))
                : new FindingRecorded(act.way().words() + ": " + act.label() + ". " + answer.words(), false);
    }

    private static Source source(DeviceAct act) {
        return act.way() == DeviceAct.Way.ASK ? Source.REPORTED : Source.SEEN;
    }

    private static ReadingRecorded reading(Seen seen, Seen.Gauge gauge, Optional<Finding> asked) {
        Limits limits = asked.map(Finding::limits).orElse(null);
        boolean limited = limits != null && (limits.low() != null || limits.high() != null);
        return new ReadingRecorded(
                gauge.quantity(),
                seen.value(),
                gauge.unit(),
                gauge.point(),
                gauge.instrument(),
                limited ? decimal(limits.low()) : null,
                limited ? decimal(limits.high()) : null,
                limited ? "cause catalogue" : "",
                null,
                null,
                asked.map(Finding::id).orElse(null));
    }

    private static @Nullable String decimal(@Nullable Double value) {
        return value == null
                ? null
                : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
