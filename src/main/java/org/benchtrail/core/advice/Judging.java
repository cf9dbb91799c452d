package org.benchtrail.core.advice;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.memory.ModuleFit;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Nominal;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.jspecify.annotations.Nullable;

/**
 * What a number says of a finding, by its own limit where it has one: a nameplate knows better than the catalogue. A limit that
 * depends on the mains, the module or the drive is that of the case known.
 */
final class Judging {
    static final String SOLID_STATE = "solid-state";
    private static final double COVERAGE = 2;
    private static final double LOW_VOLTAGE = 1.35;

    private final Map<Nominal.By, String> cases = new EnumMap<>(Nominal.By.class);

    /** Nothing is known that a limit could depend on. */
    Judging() {}

    Judging(JobSheet sheet, SheetReader reader) {
        reader.mains(sheet).ifPresent(volts -> cases.put(Nominal.By.MAINS, volts));
        generation(sheet, reader).ifPresent(name -> cases.put(Nominal.By.MEMORY, name));
    }

    /** @param excess how far it lies beyond its limit, in the unit of the limits; negative within */
    record Judged(String value, double reliability, double excess) {}

    /** @throws Invalid with the reason if it says nothing of the finding */
    Judged of(Finding finding, ReadingRecorded reading) {
        Finding by = reading.lower() == null && reading.upper() == null ? finding : withOwn(finding, reading);
        double uncertainty = COVERAGE * reading.standardUncertainty().orElse(0);
        return judged(
                finding,
                known(by, reading.instrument().contains("NVMe") ? SOLID_STATE : ""),
                new BigDecimal(reading.value()).toPlainString(),
                reading.unit(),
                uncertainty,
                SheetEvidence.reliability(reading));
    }

    /** @throws Invalid with the reason if it says nothing of the finding */
    Judged of(Finding finding, Sign.Measured measured, double reliability) {
        Finding by = finding;
        if (bears(finding, measured.low() != null, measured.high() != null)) {
            by = finding.withLimits(new Limits(measured.unit(), measured.low(), measured.high(), 0, null, null));
        }
        return judged(
                finding,
                known(by, measured.nominal()),
                BigDecimal.valueOf(measured.value()).toPlainString(),
                measured.unit(),
                0,
                reliability);
    }

    private static Judged judged(
            Finding finding, Finding by, String number, String given, double uncertainty, double reliability) {
        Limits limits = by.limits();
        if (limits == null) {
            throw new Invalid("value", "the catalogue has no limit for: " + finding.label());
        }
        Unit unit = Units.read("unit", limits.unit());
        Quantity value = Quantity.of(number, Units.read("unit", given));
        if (unit.dimension() != value.unit().dimension() || !isAskedFor(finding, value.unit())) {
            throw new Invalid("unit", "give it in a unit of " + limits.unit() + " to be heard for: " + finding.label());
        }
        double expanded =
                Quantity.of(BigDecimal.valueOf(uncertainty), value.unit()).asDifferenceIn(unit);
        double x = value.in(unit);
        Finding.JudgedReading judged = by.judge(x, expanded, reliability);
        return new Judged(judged.value(), judged.reliability(), limits.excess(x));
    }

    /** A share of a rating may be read as the value itself, held against the rating. */
    private static boolean isAskedFor(Finding finding, Unit unit) {
        return finding.limits() == null
                || Units.read("unit", finding.limits().unit()).dimension() == unit.dimension()
                || finding.limits().unit().equals("%");
    }

    /** Whether a reading can be meant by words that ask for that unit. */
    static boolean isOf(String asked, String given, boolean ownLimit) {
        try {
            boolean alike = Units.read("unit", asked).dimension()
                    == Units.read("unit", given).dimension();
            return alike || (asked.equals("%") && ownLimit);
        } catch (Invalid e) {
            return false;
        }
    }

    /** The reading's own limits, if they bound a side that the finding has a name for. */
    private static Finding withOwn(Finding f, ReadingRecorded reading) {
        return f.making() == null || bears(f, reading.lower() != null, reading.upper() != null)
                ? f.withLimits(
                        new Limits(reading.unit(), bound(reading.lower()), bound(reading.upper()), 0, null, null))
                : f;
    }

    private static boolean bears(Finding f, boolean low, boolean high) {
        return (low && f.values().contains(Finding.BELOW))
                || (high && f.values().contains(Finding.ABOVE));
    }

    private static @Nullable Double bound(@Nullable String text) {
        return text == null ? null : Double.valueOf(text);
    }

    /** By the limits of the case that is known; as it is if they hold everywhere, or nothing is known. */
    private Finding known(Finding f, String told) {
        Limits limits = f.limits();
        if (limits == null || limits.nominal() == null) {
            return f;
        }
        Nominal nominal = limits.nominal();
        String name = nominal.by() == Nominal.By.DRIVE ? told : cases.getOrDefault(nominal.by(), "");
        Nominal.Case one = nominal.cases().get(name);
        return one == null ? f : f.withLimits(limits.in(one));
    }

    /** Of the module that was last compared with its board. */
    private static Optional<String> generation(JobSheet sheet, SheetReader reader) {
        return sheet.latest(
                        BenchResultAttached.class, a -> a.fact().calculation().equals("module-fit"))
                .map(StandingFact::fact)
                .flatMap(reader::again)
                .map(again -> (ModuleFit.Input) again.input())
                .map(in -> in.generation() == ModuleFit.Generation.DDR3 && in.voltage() <= LOW_VOLTAGE
                        ? "DDR3L"
                        : in.generation().name());
    }
}
