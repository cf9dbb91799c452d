package org.benchtrail.core.method.identify;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import org.benchtrail.core.measure.Accuracy;
import org.benchtrail.core.measure.Judgement;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.CatalogueAnswer;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.GuardedAct;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A measured value.
 *
 * @param quantity what was measured, such as "processor temperature"
 * @param value decimal, as a string so that nothing is lost; may be typed with its unit, which is then taken out
 * @param unit of the value and of the limits; may be left out if the value names it
 * @param point where it was measured
 * @param instrument what it was measured with; empty if not told
 * @param lower lowest value that conforms, inclusive; null if there is none
 * @param upper highest value that conforms, inclusive; null if there is none
 * @param limitSource where the limit comes from; empty without limits
 * @param accuracy how well the instrument shows it, see {@link Accuracy#parse}; null if not told
 * @param guard guard band of the verdict, in standard uncertainties, as policy had it then; null without accuracy
 * @param finding id of the catalogue's finding that this reading answers; null if none
 */
public record ReadingRecorded(
        String quantity,
        String value,
        String unit,
        String point,
        String instrument,
        @Nullable String lower,
        @Nullable String upper,
        String limitSource,
        @Later @Nullable String accuracy,
        @Later @Nullable String guard,
        @Later @Nullable String finding)
        implements EvidenceFact {
    public ReadingRecorded {
        FieldChecks t = new FieldChecks();
        quantity = t.required("quantity", quantity, FieldChecks.LINE, "Say what was measured.");
        t.require(value != null && !value.isBlank(), "value", "Give the measured value.");
        MeasuredText typed = MeasuredText.of(t, value, unit);
        value = typed.value();
        unit = t.required("unit", typed.unit(), 40, "Give the unit; for a plain count write 'count'.");
        point = t.required("point", point, FieldChecks.LINE, "Say where it was measured.");
        instrument = t.optional("instrument", instrument, FieldChecks.LINE);
        lower = MeasuredText.decimal(t, "lower", lower, unit);
        upper = MeasuredText.decimal(t, "upper", upper, unit);
        limitSource = t.optional("limitSource", limitSource, FieldChecks.LINE);
        t.require(
                (lower == null && upper == null) || !limitSource.isEmpty(),
                "limitSource",
                "Say where the limit comes from: a standard, the nameplate, or site policy.");
        if (lower != null && upper != null) {
            t.require(
                    new BigDecimal(lower).compareTo(new BigDecimal(upper)) <= 0,
                    "upper",
                    "The upper limit is below the lower one.");
        }
        accuracy = t.orNull("accuracy", accuracy, FieldChecks.LINE);
        guard = accuracy == null ? null : Objects.requireNonNullElse(t.orNull("guard", guard, 10), "2");
        finding = t.orNull("finding", finding, 80);
        t.done();
        if (accuracy != null) {
            ReadingCheck.of(value, unit, accuracy).require(lower, upper, guard);
        }
    }

    /** A reading of whose instrument nothing is known. */
    public ReadingRecorded(
            String quantity,
            String value,
            String unit,
            String point,
            String instrument,
            @Nullable String lower,
            @Nullable String upper,
            String limitSource) {
        this(quantity, value, unit, point, instrument, lower, upper, limitSource, null, null, null);
    }

    /** With the guard band that policy asks for. */
    public ReadingRecorded guarded(String multiple) {
        return new ReadingRecorded(
                quantity, value, unit, point, instrument, lower, upper, limitSource, accuracy, multiple, finding);
    }

    /** Held against that limit, if it is of the same kind; kept with the reading, so that no later setting touches it. */
    private ReadingRecorded within(Limit limit) {
        Unit own = Units.read("unit", unit);
        if (own.dimension() != limit.unit().dimension()) {
            return this;
        }
        Limit here = limit.in(own);
        return new ReadingRecorded(
                quantity,
                value,
                unit,
                point,
                instrument,
                here.lower().map(BigDecimal::toPlainString).orElse(null),
                here.upper().map(BigDecimal::toPlainString).orElse(null),
                limit.source(),
                accuracy,
                guard,
                finding);
    }

    /** By the guard band if the accuracy is known, else by plain comparison; limits inclusive. */
    public ReadingVerdict verdict() {
        if (lower == null && upper == null) {
            return ReadingVerdict.NOT_JUDGED;
        }
        return judgement().map(ReadingRecorded::verdict).orElseGet(() -> heldPlainly(lower, upper));
    }

    static ReadingVerdict verdict(Judgement judgement) {
        return switch (judgement.verdict()) {
            case WITHIN -> ReadingVerdict.WITHIN;
            case OUTSIDE -> ReadingVerdict.OUTSIDE;
            case TOO_CLOSE_TO_CALL -> ReadingVerdict.TOO_CLOSE;
        };
    }

    /** Held against bounds in its own unit, without regard to uncertainty. */
    ReadingVerdict heldPlainly(@Nullable String lowest, @Nullable String highest) {
        BigDecimal measured = new BigDecimal(value);
        boolean above = highest != null && measured.compareTo(new BigDecimal(highest)) > 0;
        boolean below = lowest != null && measured.compareTo(new BigDecimal(lowest)) < 0;
        return above || below ? ReadingVerdict.OUTSIDE : ReadingVerdict.WITHIN;
    }

    /** The verdict with its uncertainty and probability; empty if limit or accuracy is not known. */
    public Optional<Judgement> judgement() {
        return accuracy == null || (lower == null && upper == null)
                ? Optional.empty()
                : Optional.of(ReadingCheck.of(value, unit, accuracy).judge(lower, upper, guard));
    }

    /** Standard uncertainty in the reading's unit; empty if the accuracy is not known. */
    public OptionalDouble standardUncertainty() {
        return accuracy == null
                ? OptionalDouble.empty()
                : ReadingCheck.of(value, unit, accuracy).standardUncertainty();
    }

    /**
     * Whether this reading lies within the limit that the other one broke, whatever limit of its own it names: in a unit that
     * converts, as well known as the other was, and not too close to call.
     */
    public boolean isWithinLimitOf(ReadingRecorded outside) {
        return ReadingCheck.held(this, outside) == ReadingVerdict.WITHIN;
    }

    /** What was outside its limit has to come back within it. */
    @Override
    public boolean isLessenedBy(@Nullable Fact replacement) {
        return verdict() == ReadingVerdict.OUTSIDE
                && !(replacement instanceof ReadingRecorded now
                        && now.verdict() == ReadingVerdict.OUTSIDE
                        && now.samePlace(this)
                        && now.unit.equals(unit)
                        && Objects.equals(now.lower, lower)
                        && Objects.equals(now.upper, upper)
                        && (accuracy == null || now.accuracy != null));
    }

    /** Whether the other reading is of the same quantity at the same point, whatever the letter case. */
    public boolean samePlace(ReadingRecorded other) {
        return quantity.equalsIgnoreCase(other.quantity) && point.equalsIgnoreCase(other.point);
    }

    @Override
    public boolean countsAsEvidence() {
        return true;
    }

    @Override
    public boolean comesFromDevice() {
        return true;
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    @Override
    public List<Missing> keptFrom(JobSheet sheet, StandingFact<?> self, @Nullable Fact replacement, Actor actor) {
        boolean cited = !sheet.all(
                        ResultRecorded.class,
                        r -> Integer.valueOf(self.entry()).equals(r.fact().reading()))
                .isEmpty();
        return cited ? Missing.reliedOn() : List.of();
    }

    /** What the device tells of itself is read, not measured: nobody's hands come near. */
    private static final Pattern TOLD_BY_DEVICE = Pattern.compile(
            "\\b(own (sensor|meter|display|log)s?|display|front panel|web page|SNMP|UPS-MIB|Redfish|SMART|NVMe)\\b",
            Pattern.CASE_INSENSITIVE);

    /** Whether it is measured on live mains or inside a supply, by its words and its value. */
    private boolean live() {
        if (TOLD_BY_DEVICE.matcher(instrument).find()) {
            return false;
        }
        String words = "Measured " + quantity + " at " + point + " with " + instrument + " as " + value + " " + unit;
        return Caution.toldBy(words).contains(Caution.LIVE);
    }

    /** What is measured live is measured after the caution, not with it. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        return live() ? LiveGuard.lacking(s) : List.of();
    }

    @Override
    public Optional<GuardedAct> guardedAct(JobSheet sheet) {
        return live() ? Optional.of(new GuardedAct(GuardedAct.NO_CHECK, Set.of(Caution.LIVE))) : Optional.empty();
    }

    @Override
    public Fact completedBy(ServerKnowledge server) {
        ReadingRecorded judged = lower != null || upper != null
                ? this
                : server.nameplateOf(quantity)
                        .or(() -> Optional.ofNullable(finding).flatMap(server::limitOf))
                        .map(this::within)
                        .orElse(this);
        return accuracy == null
                ? judged
                : judged.guarded(server.policy().guardBand().toPlainString());
    }

    @Override
    public Optional<CatalogueAnswer> says(JobSheet sheet) {
        return CatalogueAnswer.of(this);
    }

    @Override
    public RecordPlace placeIn(JobSheet sheet) {
        return RecordPlace.TABLE;
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                quantity + ", " + point + ": " + value + " " + unit + ", " + verdictWords(),
                Told.labelled("limit", limitWords() + (limitSource.isEmpty() ? "" : ", " + limitSource)),
                instrument + (accuracy == null ? "" : " \u00b1 " + accuracy));
    }

    private String verdictWords() {
        return switch (verdict()) {
            case WITHIN -> "within its limit";
            case OUTSIDE -> "outside its limit";
            case TOO_CLOSE -> "too close to its limit to call";
            case NOT_JUDGED -> "no limit given";
        };
    }

    /** Its limit with the unit; empty if there is none. */
    public String limitWords() {
        if (lower != null && upper != null) {
            return lower + " to " + upper + "\u202f" + unit;
        }
        if (lower != null) {
            return "at least " + lower + "\u202f" + unit;
        }
        return upper == null ? "" : "at most " + upper + "\u202f" + unit;
    }
}
