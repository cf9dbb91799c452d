package org.benchtrail.core.bench;

import java.util.function.Function;

/**
 * One entry of the bench: what it is called, and a pure function from a typed input record to a result that shows its working.
 *
 * <p>The input is a record whose components carry {@link Ask}, so that a page, the API and the trail can all ask for it and
 * show it without knowing the trade. Components are {@code double}, {@code int}, {@code boolean}, an enum, {@code String},
 * or a {@code List} of such a record or of {@code Double}; a {@code Double} that may be null is an optional value. Its compact
 * constructor refuses what is outside the domain with {@link org.benchtrail.core.Invalid}, naming every field at once.
 *
 * @param id stable, as in the API and the trail, such as {@code ups-runtime}
 * @param version raised whenever the same input would give another result
 * @param title short, such as "UPS runtime"
 * @param question what it answers, as one sentence
 * @param example values that make a sensible worked example
 * @param formula throws {@link org.benchtrail.core.Invalid} if the input cannot be judged, naming field and reason
 */
public record Calculation<I extends Record>(
        String id, int version, Trade trade, String title, String question, I example, Function<I, Result> formula) {

    @SuppressWarnings("unchecked") // a record is final: the example's class is the type itself
    public Class<I> inputType() {
        return (Class<I>) example.getClass();
    }

    /** @throws org.benchtrail.core.Invalid if the input cannot be judged, naming field and reason */
    public Result calculate(I input) {
        return formula.apply(input);
    }

    @Override
    public String toString() {
        return id;
    }
}
