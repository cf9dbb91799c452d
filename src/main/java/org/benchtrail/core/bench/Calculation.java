package org.benchtrail.core.bench;

/**
 * One entry of the bench: a pure function from a typed input record to a result that shows its working.
 *
 * <p>The input is a record whose components carry {@link Ask}, so that a page, the API and the trail can all ask for it and
 * show it without knowing the trade. Components are {@code double}, {@code int}, {@code boolean}, an enum, {@code String},
 * or a {@code List} of such a record or of {@code Double}; a {@code Double} that may be null is an optional value.
 *
 * @param <I> the input record; its compact constructor refuses what is outside the domain with {@link
 *     org.benchtrail.core.Invalid}, naming every field at once
 */
public interface Calculation<I extends Record> {
    /** Stable id as in the API and the trail, such as {@code ups-runtime}. */
    String id();

    /** Version of the calculation: raised whenever the same input would give another result. */
    int version();

    Trade trade();

    /** Short title, such as "UPS runtime". */
    String title();

    /** The question it answers, as one sentence. */
    String question();

    Class<I> inputType();

    /** Values that make a sensible worked example. */
    I example();

    /** @throws org.benchtrail.core.Invalid if the input cannot be judged, naming field and reason */
    Result calculate(I input);
}
