package org.benchtrail.core.training;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.training.RecallForm.Answering;

/**
 * A question made from what somebody did on a job that has ended. It names no person and no place, and nothing that was written in
 * free words.
 *
 * @param id stable; the same job makes the same question again
 * @param safety whether it is of a requirement that guards people or data
 * @param asks the question
 * @param given what it is to be answered from, a line each
 * @param choices in the order in which they are shown; none where a number is asked for
 * @param key ids of the right choices, in their order where that is asked for; or the right number
 * @param because what is said once it is answered
 * @param entry of the job, where it can be looked up; 0 if it is all of it
 */
public record RecallItem(
        String id,
        RecallForm form,
        Source source,
        boolean safety,
        String asks,
        List<String> given,
        List<Choice> choices,
        List<String> key,
        String because,
        int entry) {
    /** By which a number may differ from the right one; a choice of this project. */
    private static final double NEAR = 0.05;

    private static final String DECIMAL = "[0-9]{1,9}([.,][0-9]{1,6})?";

    public RecallItem {
        given = List.copyOf(given);
        choices = List.copyOf(choices);
        key = List.copyOf(key);
    }

    /**
     * The job.
     *
     * @param job by which its questions are named
     * @param whole where it is read
     * @param at the same up to the number of an entry
     * @param trade what kind of trouble it was, in words
     * @param ended when it was closed, or given up
     */
    public record Source(String job, String whole, String at, String trade, Instant ended) {}

    /** Where it can be looked up. */
    public String link() {
        return entry == 0 ? source.whole : source.at + entry;
    }

    public record Choice(String id, String words) {}

    /**
     * Whether that is the answer: all right choices and no other, the whole order, or a number within 5 %, inclusive.
     *
     * @throws Invalid if it is none: nothing chosen, what is not offered, or no number. Nobody is wrong by saying nothing.
     */
    public boolean isRight(List<String> answer) {
        if (form.answering() == Answering.NUMBER) {
            return isNear(answer);
        }
        boolean offered = !answer.isEmpty()
                && answer.stream().allMatch(a -> choices.stream().anyMatch(c -> c.id.equals(a)));
        boolean whole = switch (form.answering()) {
            case ONE -> answer.size() == 1;
            case ORDER -> answer.size() == choices.size() && new HashSet<>(answer).size() == answer.size();
            default -> true;
        };
        if (!offered || !whole) {
            throw new Invalid(
                    "answer",
                    form.answering() == Answering.ORDER
                            ? "Give each of them a place of its own."
                            : "Choose an answer, or skip the questions for today.");
        }
        return form.answering() == Answering.ORDER
                ? answer.equals(key)
                : new HashSet<>(answer).equals(new HashSet<>(key));
    }

    private boolean isNear(List<String> answer) {
        if (answer.size() != 1 || !answer.get(0).matches(DECIMAL)) {
            throw new Invalid("answer", "Give a number, such as 17.5, or skip the questions for today.");
        }
        double right = Double.parseDouble(key.get(0));
        double said = Double.parseDouble(answer.get(0).replace(',', '.'));
        return Math.abs(said - right) <= NEAR * right * (1 + 1e-9);
    }
}
