package org.benchtrail.core.method;

import org.jspecify.annotations.Nullable;

/** What is recorded to document findings, actions and outcome. */
public sealed interface DocumentFact extends Fact {
    @Override
    default Step step() {
        return Step.DOCUMENT;
    }

    /** How the cause is known. */
    enum Sureness {
        MEASURED("confirmed by measurement"),
        BY_REPAIR("confirmed by the repair"),
        PRESUMED("presumed");

        private final String words;

        Sureness(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    record CauseNamed(String cause, @Nullable String causeId, Sureness sureness) implements DocumentFact {
        public CauseNamed {
            Texts t = new Texts();
            cause = t.required("cause", cause, Texts.LINE, "Name the cause.");
            causeId = t.orNull("causeId", causeId, Texts.LINE);
            t.require(sureness != null, "sureness", "Say how the cause is known.");
            t.done();
        }
    }

    record SummaryWritten(String findings, String actions, String outcome) implements DocumentFact {
        public SummaryWritten {
            Texts t = new Texts();
            findings = t.required("findings", findings, Texts.PARAGRAPH, "Sum up what was found.");
            actions = t.required("actions", actions, Texts.PARAGRAPH, "Sum up what was done.");
            outcome = t.required("outcome", outcome, Texts.PARAGRAPH, "Say how it stands now.");
            t.done();
        }
    }

    enum Signatory {
        ASSIGNEE,
        MENTOR
    }

    /** A signature under the latest summary; who signed stands in the entry's stamp. */
    record Signed(Signatory signatory) implements DocumentFact {
        public Signed {
            Texts t = new Texts();
            t.require(signatory != null, "signatory", "Say whether the assignee or the mentor signs.");
            t.done();
        }
    }

    enum Learned {
        CONFIRMED("confirms a known cause"),
        PROPOSED("proposes a new known cause"),
        NOTHING("nothing is learned");

        private final String words;

        Learned(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * What the next technician gains from this ticket.
     *
     * @param text the known cause in words, or why nothing is learned; may be empty where {@code known} names it
     * @param known number of the known cause that this ticket confirms; null if it is none of the knowledge base
     */
    record KnowledgeLinked(
            Learned learned, String text, @Nullable Long known) implements DocumentFact {
        public KnowledgeLinked {
            Texts t = new Texts();
            t.require(learned != null, "learned", "Say what the next technician gains from this.");
            text = known == null
                    ? t.required("text", text, Texts.PARAGRAPH, "Name the known cause, or say why nothing is learned.")
                    : t.optional("text", text, Texts.PARAGRAPH);
            t.require(
                    known == null || learned == null || learned == Learned.CONFIRMED,
                    "known",
                    "Choose a known cause only where this ticket confirms one.");
            t.done();
        }

        /** With the known cause in words only. */
        public KnowledgeLinked(Learned learned, String text) {
            this(learned, text, null);
        }
    }

    record EffortRecorded(int minutes, String parts) implements DocumentFact {
        public EffortRecorded {
            Texts t = new Texts();
            t.require(minutes >= 1 && minutes <= 100_000, "minutes", "Give the time spent in minutes, 1 to 100000.");
            parts = t.optional("parts", parts, Texts.PARAGRAPH);
            t.done();
        }
    }
}
