package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.Texts;

public record LogsReviewed(boolean looked, String note) implements IdentifyFact {
    public LogsReviewed {
        Texts t = new Texts();
        note = t.required(
                "note",
                note,
                Texts.PARAGRAPH,
                "Say what the logs show (nothing is an answer), or why they were not read.");
        t.done();
    }
}
