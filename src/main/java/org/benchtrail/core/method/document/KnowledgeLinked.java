package org.benchtrail.core.method.document;

import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * What the next technician gains from this ticket.
 *
 * @param text the known cause in words, or why nothing is learned; may be empty where {@code known} names it, or a new one is
 *     proposed, which is drafted from the ticket
 * @param known number of the known cause that this ticket confirms; null if it is none of the knowledge base
 */
public record KnowledgeLinked(
        Lesson learned,
        @FreeText String text,
        @Later @Nullable Long known) implements DocumentFact {
    public KnowledgeLinked {
        FieldChecks t = new FieldChecks();
        t.require(learned != null, "learned", "Say what the next technician gains from this.");
        text = known == null && learned != Lesson.PROPOSED
                ? t.required(
                        "text", text, FieldChecks.PARAGRAPH, "Name the known cause, or say why nothing is learned.")
                : t.optional("text", text, FieldChecks.PARAGRAPH);
        t.require(
                known == null || learned == null || learned == Lesson.CONFIRMED,
                "known",
                "Choose a known cause only where this ticket confirms one.");
        t.done();
    }

    /** With the known cause in words only. */
    public KnowledgeLinked(Lesson learned, String text) {
        this(learned, text, null);
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(known == null ? learned.words() : learned.words() + ", number " + known, text);
    }
}
