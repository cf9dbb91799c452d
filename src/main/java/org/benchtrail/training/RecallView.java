package org.benchtrail.training;

import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.core.training.RecallForm.Answering;
import org.benchtrail.core.training.RecallItem;
import org.jspecify.annotations.Nullable;

/**
 * The questions of a day.
 *
 * @param told those that are answered, with what is right
 * @param next the one that is asked now; null if none is
 * @param place of that one, from 1
 * @param size how many the day has
 * @param answers how many were ever given
 * @param hits how many of them were right
 */
record RecallView(State state, List<Told> told, @Nullable Asked next, int place, int size, long answers, long hits) {

    /** Why something is asked, or nothing. */
    enum State {
        ASKED,
        DONE,
        /** Nothing to ask today. */
        NONE,
        SKIPPED,
        /** Work is stopped on a ticket of the person, or one becomes overdue within minutes. */
        URGENT,
        /** Asked of trainees alone. */
        NOT_ASKED
    }

    static RecallView nothing(State state) {
        return new RecallView(state, List.of(), null, 0, 0, 0, 0);
    }

    /**
     * A question without its key.
     *
     * @param form how it is answered
     * @param from the trade of its job
     */
    record Asked(
            String id,
            Answering form,
            String asks,
            List<String> given,
            List<RecallItem.Choice> choices,
            String from,
            String ended) {
        /** Places for what is put in order. */
        public List<String> places() {
            return IntStream.rangeClosed(1, choices.size())
                    .mapToObj(String::valueOf)
                    .toList();
        }

        public boolean isOne() {
            return form == Answering.ONE;
        }

        public boolean isAny() {
            return form == Answering.ANY;
        }

        public boolean isOrder() {
            return form == Answering.ORDER;
        }
    }

    /**
     * One that is answered.
     *
     * @param said what was answered, in words
     * @param right what is right, in words
     * @param link where it can be looked up
     */
    record Told(
            String asks,
            List<String> given,
            boolean hit,
            List<String> said,
            List<String> right,
            String because,
            String link) {}

    public boolean isAsked() {
        return state == State.ASKED;
    }

    public boolean isSkipped() {
        return state == State.SKIPPED;
    }

    public boolean isUrgent() {
        return state == State.URGENT;
    }

    public boolean isDone() {
        return state == State.DONE;
    }

    public boolean isOfTrainees() {
        return state == State.NOT_ASKED;
    }
}
