package org.benchtrail.core.method;

import java.util.Map;
import java.util.TreeMap;

/** What is recorded to verify full function and to prevent recurrence. */
public sealed interface VerifyFact extends Fact {
    @Override
    default Step step() {
        return Step.VERIFY;
    }

    record SymptomRechecked(int symptom, boolean gone, String how) implements VerifyFact {
        public SymptomRechecked {
            Texts t = new Texts();
            how = t.required("how", how, Texts.PARAGRAPH, "Say how it was looked for.");
            t.done();
        }
    }

    enum ItemState {
        WORKS,
        NOT_APPLICABLE,
        FAULTY
    }

    /** The category's checklist: the state of each item by its place in the list, 0 first. */
    record FunctionChecked(Map<Integer, ItemState> items, String note) implements VerifyFact {
        public FunctionChecked {
            Texts t = new Texts();
            items = items == null ? Map.of() : java.util.Collections.unmodifiableMap(new TreeMap<>(items));
            t.require(!items.isEmpty(), "items", "Answer the items of the checklist.");
            t.require(!items.containsValue(null), "items", "Each item works, is faulty, or does not apply.");
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.done();
        }
    }

    enum RequesterState {
        AGREES("agrees that it is solved"),
        DISAGREES("does not agree"),
        NOT_REACHED("could not be reached"),
        NO_USER("the device has no user");

        private final String words;

        RequesterState(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    record RequesterAnswered(RequesterState state, int tries, String note) implements VerifyFact {
        public RequesterAnswered {
            Texts t = new Texts();
            t.require(state != null, "state", "Say what the requester answered.");
            t.require(
                    state != RequesterState.NOT_REACHED || tries >= 1,
                    "tries",
                    "Say how often it was tried: at least once.");
            t.require(tries >= 0 && tries <= 1000, "tries", "Give a number of tries from 0 to 1000.");
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.done();
        }
    }

    /** What keeps it from coming back, or why nothing applies. */
    record PreventionConsidered(boolean applies, String text) implements VerifyFact {
        public PreventionConsidered {
            Texts t = new Texts();
            text = t.required("text", text, Texts.PARAGRAPH, "Name the measure, or say why none applies.");
            t.done();
        }

        @Override
        public boolean lateAllowed() {
            return true;
        }
    }

    /** A run under observation after the last action, in minutes. */
    record SoakRun(int minutes, boolean recurred, String note) implements VerifyFact {
        public SoakRun {
            Texts t = new Texts();
            t.require(minutes >= 1 && minutes <= 525_600, "minutes", "Give the run in minutes, 1 to 525600 (a year).");
            note = t.optional("note", note, Texts.PARAGRAPH);
            t.done();
        }
    }
}
