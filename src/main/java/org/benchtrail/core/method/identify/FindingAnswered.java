package org.benchtrail.core.method.identify;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.CatalogueAnswer;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.text.FieldChecks;

/**
 * A question of the cause catalogue answered.
 *
 * @param finding its id in the catalogue
 * @param question its words at that moment
 * @param value one of the finding's values, or {@code unknown}, which weighs nothing
 * @param source how it is known
 */
public record FindingAnswered(String finding, String question, String value, Source source) implements EvidenceFact {
    public FindingAnswered {
        FieldChecks t = new FieldChecks();
        finding = t.required("finding", finding, 80, "Name the finding of the catalogue.");
        question = t.required("question", question, FieldChecks.LINE, "Write the question that was answered.");
        value = t.required("value", value, 40, "Choose the answer, or 'unknown'.");
        t.require(source != null, "source", "Say how it is known: measured, seen, or told.");
        t.done();
    }

    /** To answer what only a live measurement shows, that was made: after its caution, not with it. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        boolean measured = source != Source.REPORTED && source != Source.INTERMITTENT && !value.equals("unknown");
        return measured && Caution.toldBy(question).contains(Caution.LIVE) ? LiveGuard.lacking(s) : List.of();
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    @Override
    public Optional<CatalogueAnswer> says(JobSheet sheet) {
        return CatalogueAnswer.of(finding, value, source);
    }
}
