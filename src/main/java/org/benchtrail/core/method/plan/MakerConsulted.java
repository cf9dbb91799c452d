package org.benchtrail.core.method.plan;

import org.benchtrail.core.text.Texts;

/** The maker's instructions: the reference, or why there are none for this. */
public record MakerConsulted(boolean applicable, String text) implements PlanFact {
    public MakerConsulted {
        Texts t = new Texts();
        text = t.required(
                "text", text, Texts.PARAGRAPH, "Name the maker's instructions that were read, or why none apply.");
        t.done();
    }

    @Override
    public boolean lateAllowed() {
        return true;
    }
}
