package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/**
 * What a calculation of the bench said, with what it was given, so that anybody can work it again.
 *
 * @param calculation stable id of the calculation
 * @param version of the calculation
 * @param title of the calculation
 * @param input its input record as JSON
 * @param level how the answer is to be taken
 * @param verdict in a few words
 * @param reason one sentence with the numbers
 */
@ServerOnly
public record BenchResultAttached(
        String calculation,
        int version,
        String title,
        String input,
        Result.Level level,
        String verdict,
        String reason,
        List<BenchFigure> figures)
        implements EvidenceFact {
    /** Room for a series of ten thousand points. */
    private static final int LONGEST_INPUT = 1_000_000;

    public BenchResultAttached {
        FieldChecks t = new FieldChecks();
        calculation = t.required("calculation", calculation, 80, "Name the calculation.");
        title = t.required("title", title, FieldChecks.LINE, "Name the calculation.");
        input = t.required("input", input, LONGEST_INPUT, "Give what was calculated with.");
        t.require(level != null, "level", "Say how the answer is to be taken.");
        verdict = t.required("verdict", verdict, FieldChecks.LINE, "Say what came out.");
        reason = t.required("reason", reason, 20_000, "Say why.");
        figures = figures == null ? List.of() : List.copyOf(figures);
        t.done();
    }

    @Override
    public boolean countsAsEvidence() {
        return true;
    }

    @Override
    public Correctable correctable() {
        return Correctable.STRUCK;
    }

    @Override
    public String told(Telling reader) {
        return Told.all(Told.labelled(title, verdict), reason);
    }
}
