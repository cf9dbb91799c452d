package org.benchtrail.core.method;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What is recorded to test the theory. */
public sealed interface TestFact extends Fact {
    @Override
    default Step step() {
        return Step.TEST;
    }

    /**
     * A check of a theory.
     *
     * @param theory entry number of the theory it tests
     * @param what what is done or measured
     * @param expectation what is seen if the theory is right; a check without one proves nothing and does not count
     * @param invasive whether it opens, stops or changes something
     * @param cautions what must be acknowledged before it is made
     * @param finding id of the catalogue's finding that it answers; null if none
     */
    record CheckPlanned(
            int theory,
            String what,
            String expectation,
            boolean invasive,
            Set<Caution> cautions,
            @Nullable String finding)
            implements TestFact {
        public CheckPlanned {
            Texts t = new Texts();
            what = t.required("what", what, Texts.PARAGRAPH, "Say what will be done or measured.");
            expectation = t.optional("expectation", expectation, Texts.PARAGRAPH);
            cautions = Texts.cautions(cautions);
            finding = t.orNull("finding", finding, 80);
            t.done();
        }

        /** With more cautions. */
        public CheckPlanned with(Set<Caution> more) {
            return new CheckPlanned(theory, what, expectation, invasive, Texts.union(cautions, more), finding);
        }

        /** A check of the technician's own. */
        public CheckPlanned(int theory, String what, String expectation, boolean invasive, Set<Caution> cautions) {
            this(theory, what, expectation, invasive, cautions, null);
        }
    }

    enum Outcome {
        SUPPORTS("supports the theory"),
        REFUTES("rules the theory out"),
        INCONCLUSIVE("leaves it open");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * The result of a check.
     *
     * @param check entry number of the check
     * @param observation what was seen
     * @param outcome what it says about the theory
     * @param reading entry number of the reading it rests on; null for a plain observation
     * @param answer which value of the check's finding it showed; null if the check answers none
     */
    record ResultRecorded(
            int check,
            String observation,
            Outcome outcome,
            @Nullable Integer reading,
            @Nullable String answer) implements TestFact {
        public ResultRecorded {
            Texts t = new Texts();
            observation = t.required("observation", observation, Texts.PARAGRAPH, "Say what was seen.");
            t.require(
                    outcome != null, "outcome", "Say whether it supports the theory, rules it out, or leaves it open.");
            answer = t.orNull("answer", answer, 40);
            t.done();
        }

        /** The result of a check that answers no finding of the catalogue. */
        public ResultRecorded(int check, String observation, Outcome outcome, @Nullable Integer reading) {
            this(check, observation, outcome, reading, null);
        }
    }
}
