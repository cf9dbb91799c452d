package org.benchtrail.core.method;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What is recorded to establish a theory of probable cause. */
public sealed interface TheorizeFact extends Fact {
    @Override
    default Step step() {
        return Step.THEORIZE;
    }

    /** The obvious, which is questioned first. */
    enum Obvious {
        POWER("power on, supply and switch"),
        CABLES("cables and seating"),
        SETTINGS("settings"),
        RECENT_CHANGE("what changed last");

        private final String words;

        Obvious(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    enum Look {
        IN_ORDER,
        SUSPECT,
        NOT_APPLICABLE
    }

    record ObviousQuestioned(Map<Obvious, Look> looks, String note) implements TheorizeFact {
        public ObviousQuestioned {
            Texts t = new Texts();
            Map<Obvious, Look> copy = new EnumMap<>(Obvious.class);
            if (looks != null) {
                copy.putAll(looks);
            }
            for (Obvious obvious : Obvious.values()) {
                t.require(
                        copy.get(obvious) != null,
                        "looks." + obvious,
                        "Question " + obvious.words() + ": in order, suspect or not applicable.");
            }
            looks = Collections.unmodifiableMap(copy);
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.done();
        }

        @Override
        public boolean lateAllowed() {
            return true;
        }
    }

    /** A cause put forward: from the catalogue ({@code causeId}) or in free words. */
    record TheoryStated(String text, @Nullable String causeId) implements TheorizeFact {
        public TheoryStated {
            Texts t = new Texts();
            text = t.required("text", text, Texts.LINE, "Say what the cause could be.");
            causeId = t.orNull("causeId", causeId, Texts.LINE);
            t.done();
        }

        @Override
        public boolean lateAllowed() {
            return true;
        }

        /** Whether the other one names the same cause, by its catalogue entry or word for word. */
        public boolean sameCause(TheoryStated other) {
            return (causeId != null && causeId.equals(other.causeId))
                    || text.toLowerCase(Locale.ROOT).equals(other.text.toLowerCase(Locale.ROOT));
        }
    }

    /**
     * A cause of the catalogue as it was ranked.
     *
     * @param causeId id in the catalogue
     * @param probability in [0, 1], decimal with four digits
     */
    record RankedCause(String causeId, String name, String probability) {}

    /**
     * Theories in order of likelihood, best first, and on what basis: those stated, by entry number, or those of the catalogue.
     *
     * @param causes the causes of the catalogue as the server ranked them; null if a person gave the order
     * @param catalogue version of the catalogue that they were ranked with; null if a person gave the order
     */
    record TheoriesRanked(
            List<Integer> order,
            String basis,
            @Nullable List<RankedCause> causes,
            @Nullable Integer catalogue) implements TheorizeFact {
        public TheoriesRanked {
            Texts t = new Texts();
            order = order == null ? List.of() : List.copyOf(order);
            causes = causes == null ? null : List.copyOf(causes);
            t.require(!order.isEmpty() || causes != null, "order", "Name the theories, the likeliest first.");
            basis = t.required("basis", basis, Texts.LINE, "Say what the order rests on.");
            t.done();
        }

        /** An order that a person gave. */
        public TheoriesRanked(List<Integer> order, String basis) {
            this(order, basis, null, null);
        }

        @Override
        public boolean lateAllowed() {
            return true;
        }
    }

    /**
     * The one theory that is tested next.
     *
     * @param theory entry number
     * @param reason why this one, where it is not the best ranked; else may be empty
     * @param newEvidence what is new, where it was ruled out before; else may be empty
     */
    record TheoryChosen(int theory, String reason, String newEvidence) implements TheorizeFact {
        public TheoryChosen {
            Texts t = new Texts();
            reason = t.optional("reason", reason, Texts.PARAGRAPH);
            newEvidence = t.optional("newEvidence", newEvidence, Texts.PARAGRAPH);
            t.done();
        }
    }
}
