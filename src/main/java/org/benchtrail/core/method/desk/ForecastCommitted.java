package org.benchtrail.core.method.desk;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A forecast was made before what it is about could be seen. What it says stands elsewhere, for its author's eyes; here stands
 * what binds it.
 *
 * @param about entry of the check or action that it is about; null for one about the causes or a finding
 * @param round in which it was made
 * @param commitment of its content, 64 lower-case hexadecimal digits
 * @param finding id of the finding that it is about; null for every other
 */
@ServerOnly
public record ForecastCommitted(
        ForecastKind forecast,
        @Nullable Integer about,
        int round,
        String commitment,
        @Later @Nullable String finding) implements ForecastFact {
    public ForecastCommitted {
        FieldChecks t = new FieldChecks();
        t.require(forecast != null, "forecast", "Say what the forecast is about.");
        commitment = t.required("commitment", commitment, 64, "Give the commitment.");
        t.require(commitment.matches("[0-9a-f]{64}"), "commitment", "A commitment has 64 hexadecimal digits.");
        finding = t.orNull("finding", finding, 80);
        t.require(
                (forecast == ForecastKind.FINDING) == (finding != null), "finding", "Name the finding, of a finding.");
        t.require(
                (forecast != ForecastKind.CHECK && forecast != ForecastKind.ACTION) || about != null,
                "about",
                "Name the entry that it is about.");
        t.done();
    }

    /** One about the causes, or an entry. */
    public ForecastCommitted(ForecastKind forecast, @Nullable Integer about, int round, String commitment) {
        this(forecast, about, round, commitment, null);
    }

    @Override
    public String forecaster(Stamp stamp) {
        return stamp.person();
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        if (round != s.sheet().round()) {
            return Missing.rule("forecast-not-due", "It was made for another round.", Sight.ANCHOR);
        }
        if (!forecast.isOfCauses()) {
            return Foreseeable.of(s.sheet(), actor).lacking(this);
        }
        List<Missing> missing = new ArrayList<>(ForecastFact.unlessDue(s.sheet(), actor, forecast));
        if (missing.isEmpty() && forecast == ForecastKind.CAUSES_EARLY) {
            missing.addAll(Sight.beforeForecast(s));
        }
        return missing;
    }

    @Override
    public String told(Telling reader) {
        return forecast.words() + ", round " + round;
    }
}
