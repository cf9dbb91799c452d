package org.benchtrail.core.readin;

import java.math.BigDecimal;
import java.util.Arrays;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Series;

/** A series of time and value: what it amounts to, and its samples for the calculations of the bench. */
public final class SeriesSummary {
    private SeriesSummary() {}

    /**
     * @param about with the quantity and the unit of the values
     * @throws Invalid as {@link Series#parse}, or if the unit is not told
     */
    public static ReadIn read(String text, About about) {
        if (about.unit().isEmpty()) {
            throw new Invalid("unit", "Give the unit of the values; the lines do not tell it.");
        }
        Series series = Series.parse(text);
        String quantity = about.quantity().isEmpty() ? "value" : about.quantity();
        Draft draft = new Draft(
                Kind.SERIES,
                about.device().isEmpty() ? "series" : about.device(),
                "series of " + series.size() + " rows");
        double[] values = series.values();
        int last = values.length - 1;
        value(draft, quantity + ", first", values[0], about.unit());
        value(draft, quantity + ", last", values[last], about.unit());
        value(draft, quantity + ", lowest", Arrays.stream(values).min().orElseThrow(), about.unit());
        value(draft, quantity + ", highest", Arrays.stream(values).max().orElseThrow(), about.unit());
        value(draft, "time from first to last row", series.span(), "s");
        draft.reading("rows", "rows", BigDecimal.valueOf(series.size()), "count", "", Bounds.NONE);
        return draft.done(series);
    }

    private static void value(Draft draft, String quantity, double value, String unit) {
        draft.reading("rows", quantity, BigDecimal.valueOf(value).stripTrailingZeros(), unit, "", Bounds.NONE);
    }
}
