package org.benchtrail.core.readin;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.measure.Series;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.jspecify.annotations.Nullable;

/** Collects what a source holds; every reading of one source shares its device and its instrument. */
final class Draft {
    /** A recorded value has at most fifteen digits before the point and fifteen behind it. */
    private static final int MOST_DIGITS = 15;

    private static final int LONGEST_FINDING = 4_000;

    private final Kind kind;
    private final String device;
    private final String instrument;
    private final List<ReadingRecorded> readings = new ArrayList<>();
    private final List<FindingRecorded> findings = new ArrayList<>();
    private final List<String> skipped = new ArrayList<>();
    private final Set<String> places = new HashSet<>();

    /** @param device what stands before every point; may be empty */
    Draft(Kind kind, String device, String instrument) {
        this.kind = kind;
        this.device = device;
        this.instrument = instrument;
    }

    /** @throws Invalid with {@code place} as its field if the value cannot be recorded */
    void reading(String place, String quantity, BigDecimal value, String unit, String point, Bounds bounds) {
        String lower = orNull(place, bounds.lower());
        String upper = orNull(place, bounds.upper());
        String free = free(quantity, at(point));
        try {
            readings.add(new ReadingRecorded(
                    quantity, plain(place, value), unit, free, instrument, lower, upper, bounds.source()));
        } catch (Invalid e) {
            throw new Invalid(place, e.problems().get(0).sentence());
        }
    }

    private String at(String point) {
        return device.isEmpty() || point.isEmpty() ? device + point : device + ", " + point;
    }

    /** Two sensors of one name are two places all the same. */
    private String free(String quantity, String point) {
        String free = point;
        for (int i = 2; !places.add((quantity + '\n' + free).toLowerCase(Locale.ROOT)); i++) {
            free = point + " (" + i + ")";
        }
        return free;
    }

    private static @Nullable String orNull(String place, @Nullable BigDecimal value) {
        return value == null ? null : plain(place, value);
    }

    /** Checked before it is written out: ten digits can name a number of a thousand million of them. */
    private static String plain(String place, BigDecimal value) {
        if (value.signum() != 0 && (long) value.precision() - value.scale() > MOST_DIGITS) {
            throw new Invalid(place, "Nothing measured is that large: at most " + MOST_DIGITS + " digits are kept.");
        }
        if (value.signum() == 0 || value.precision() - (long) value.scale() < -MOST_DIGITS) {
            return "0";
        }
        BigDecimal kept = value.scale() > MOST_DIGITS ? value.setScale(MOST_DIGITS, RoundingMode.HALF_EVEN) : value;
        return kept.toPlainString();
    }

    void finding(String text, boolean driveFailure) {
        String about = device.isEmpty() ? text : device + ": " + text;
        String kept = about.length() <= LONGEST_FINDING ? about : about.substring(0, LONGEST_FINDING - 1) + "…";
        findings.add(new FindingRecorded(kept, driveFailure));
    }

    /** What a calculation of the bench says of a drive; from a failing one on, its data come first. */
    void driveHealth(Result result) {
        Result.Judgement said = result.judgement();
        finding("Drive health, " + said.words() + ". " + said.reason(), said.level() == Result.Level.BAD);
    }

    void skip(String what) {
        skipped.add(what);
    }

    boolean isEmpty() {
        return readings.isEmpty() && findings.isEmpty() && skipped.isEmpty();
    }

    ReadIn done() {
        return done(null);
    }

    ReadIn done(@Nullable Series series) {
        return new ReadIn(kind, readings, findings, skipped, series);
    }
}
