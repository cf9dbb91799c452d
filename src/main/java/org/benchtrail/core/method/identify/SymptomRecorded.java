package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/** A symptom in the requester's words, and restated as something that anyone could observe. */
public record SymptomRecorded(
        @FreeText String words, @FreeText String observable, boolean intermittent) implements IdentifyFact {
    public SymptomRecorded {
        FieldChecks t = new FieldChecks();
        words = t.required("words", words, FieldChecks.PARAGRAPH, "Write down what the requester said.");
        observable = t.required(
                "observable",
                observable,
                FieldChecks.PARAGRAPH,
                "Say what can be seen, heard or measured when it happens.");
        t.done();
    }

    /** Every symptom is looked for again as it was first written down; an intermittent one for longer. */
    @Override
    public boolean isLessenedBy(@Nullable Fact replacement) {
        return !(replacement instanceof SymptomRecorded now
                && now.observable.equals(observable)
                && now.words.equals(words)
                && (now.intermittent || !intermittent));
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    @Override
    public List<String> story() {
        return List.of(words, observable);
    }

    @Override
    public List<Sign> signs(JobSheet sheet) {
        return intermittent ? List.of(Sign.of("comes-and-goes/true")) : List.of();
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(words, Source.REPORTED), new Wording(observable, Source.SEEN));
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                observable,
                words.equals(observable) ? "" : Told.labelled("in the requester's words", words),
                intermittent ? "it comes and goes" : "");
    }
}
