package org.benchtrail.core;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Input outside its domain: every problem found, each with the name of the field that holds it and a sentence that says what to do. */
public final class Invalid extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** One problem: the field's name (a record component, nested ones as {@code loads[2].watts}) and the sentence. */
    public record Problem(String field, String sentence) {}

    private final transient List<Problem> problems;

    public Invalid(String field, String sentence) {
        this(List.of(new Problem(field, sentence)));
    }

    public Invalid(List<Problem> problems) {
        super(problems.stream().map(p -> p.field() + ": " + p.sentence()).collect(Collectors.joining("; ")));
        this.problems = List.copyOf(problems);
    }

    public List<Problem> problems() {
        return problems;
    }

    /** Collects problems, so that all of them are told at once. */
    public static final class Collector {
        private final List<Problem> found = new ArrayList<>();

        public Collector require(boolean holds, String field, String sentence) {
            if (!holds) {
                found.add(new Problem(field, sentence));
            }
            return this;
        }

        public boolean isEmpty() {
            return found.isEmpty();
        }

        /** @throws Invalid if anything was found */
        public void throwIfAny() {
            if (!found.isEmpty()) {
                throw new Invalid(found);
            }
        }
    }
}
