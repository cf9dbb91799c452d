package org.benchtrail.core.method.identify;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.CatalogueAnswer;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A question of the cause catalogue answered.
 *
 * @param finding its id in the catalogue
 * @param question its words at that moment
 * @param value one of the finding's values, or {@code unknown}, which weighs nothing
 * @param source how it is known
 * @param from entry whose words suggested it; null if none did
 */
public record FindingAnswered(
        String finding,
        String question,
        String value,
        Source source,
        @Later @Nullable Integer from) implements EvidenceFact {
    public FindingAnswered {
        FieldChecks t = new FieldChecks();
        finding = t.required("finding", finding, 80, "Name the finding of the catalogue.");
        question = t.required("question", question, FieldChecks.LINE, "Write the question that was answered.");
        value = t.required("value", value, 40, "Choose the answer, or 'unknown'.");
        t.require(source != null, "source", "Say how it is known: measured, seen, or told.");
        t.done();
    }

    /** One that nobody's words suggested. */
    public FindingAnswered(String finding, String question, String value, Source source) {
        this(finding, question, value, source, null);
    }

    /** To answer what only a live measurement shows, that was made: after its caution, not with it. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        if (from != null && s.sheet().facts().stream().noneMatch(f -> f.entry() == from)) {
            throw new Invalid("from", "Entry " + from + " is not there.");
        }
        boolean measured =
                !Set.of(Source.REPORTED, Source.INTERMITTENT, Source.PRESUMED).contains(source)
                        && !value.equals("unknown");
        return measured && Caution.toldBy(question).contains(Caution.LIVE) ? LiveGuard.lacking(s) : List.of();
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
    public Optional<CatalogueAnswer> says(JobSheet sheet) {
        return CatalogueAnswer.of(finding, value, source);
    }

    @Override
    public String told(Telling reader) {
        return question + (question.endsWith("?") ? " " : ": ") + value + " (" + Told.plain(source) + ")";
    }
}
