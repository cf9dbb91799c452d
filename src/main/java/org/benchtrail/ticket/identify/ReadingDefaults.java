package org.benchtrail.ticket.identify;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.ticket.form.FormContext;
import org.benchtrail.ticket.form.Posting;
import org.jspecify.annotations.Nullable;

/**
 * What a reading takes over from the limit or the finding that was picked for it, where the technician typed nothing: quantity,
 * unit, bounds in the reading's unit, and where they come from.
 */
final class ReadingDefaults {
    private final PostedForm form;
    private final FormContext context;
    private final Map<String, String> taken = new HashMap<>();

    private ReadingDefaults(Posting posting) {
        this.form = posting.form();
        this.context = posting.context();
    }

    static Map<String, String> of(Posting posting) {
        ReadingDefaults defaults = new ReadingDefaults(posting);
        try {
            defaults.limit().ifPresent(defaults::take);
            defaults.finding().ifPresent(defaults::take);
        } catch (Invalid e) {
            e.problems().forEach(p -> posting.form().refuse("reading." + p.field(), p.sentence()));
        }
        return defaults.taken;
    }

    private Optional<LimitLibrary.Row> limit() {
        String id = form.text(EvidenceForm.LIMIT);
        Optional<LimitLibrary.Row> row = context.limits().find(id);
        if (!id.isEmpty() && row.isEmpty()) {
            form.refuse(EvidenceForm.LIMIT, "There is no such limit any more: choose another, or type the bounds.");
        }
        return row;
    }

    private void take(LimitLibrary.Row row) {
        fill("quantity", row.quantity());
        String edition = row.edition().equals("-") ? "" : ", " + row.edition();
        bound(row.limit(), row.limit().source() + edition + " (" + row.id() + ")");
    }

    private Optional<Finding> finding() {
        return context.model().flatMap(m -> SheetEvidence.finding(m, form.text("reading.finding")));
    }

    private void take(Finding finding) {
        Limits limits = finding.limits();
        fill("quantity", finding.label().replaceAll("[,(].*", "").strip());
        if (limits != null && (limits.low() != null || limits.high() != null)) {
            Unit unit = Units.read("unit", limits.unit());
            Limit limit =
                    Limit.of(decimal(limits.low()), decimal(limits.high()), unit, "cause catalogue, common practice");
            bound(limit, limit.source());
        }
    }

    private static @Nullable BigDecimal decimal(@Nullable Double bound) {
        return bound == null ? null : BigDecimal.valueOf(bound).stripTrailingZeros();
    }

    /** Bounds that the technician typed stand before any others. */
    private void bound(Limit limit, String source) {
        if (form.has("reading.lower") || form.has("reading.upper") || taken.containsKey("limitSource")) {
            return;
        }
        Unit unit = unit(limit.unit());
        fill("unit", unit.symbol());
        if (unit.dimension() != limit.unit().dimension()) {
            throw new Invalid("unit", "The limit is in " + limit.unit() + ": give the reading in a unit of that kind.");
        }
        Limit converted = limit.in(unit);
        converted.lower().ifPresent(b -> taken.put("lower", b.toPlainString()));
        converted.upper().ifPresent(b -> taken.put("upper", b.toPlainString()));
        fill("limitSource", source);
    }

    /** The unit typed, in its field or behind the value; else the limit's. */
    private Unit unit(Unit usual) {
        if (form.has("reading.unit")) {
            return Units.read("unit", form.text("reading.unit"));
        }
        return form.text("reading.value").matches("(?s).*[\\p{L}%\u00b0]")
                ? Quantity.parse("value", form.text("reading.value"), null).unit()
                : usual;
    }

    private void fill(String component, String text) {
        if (!form.has("reading." + component)) {
            taken.putIfAbsent(component, text);
        }
    }
}
