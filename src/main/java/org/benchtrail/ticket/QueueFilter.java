package org.benchtrail.ticket;

import java.util.Locale;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.text.PlainText;
import org.jspecify.annotations.Nullable;

/**
 * What part of the queue is asked for, in which order; null and empty mean 'any'. Made by {@link #of}.
 *
 * @param assignee account; {@code -} for what nobody has
 * @param place in small letters
 * @param device label, exactly as it was given
 * @param held true for tickets on hold only, false for those that are not
 * @param waiting true for tickets on which something waits for somebody other than their assignee
 * @param text words to find in title, device, place, symptoms and cause
 * @param after where the page before ended
 * @param size lines on a page, 1 to 200
 */
public record QueueFilter(
        Standing standing,
        @Nullable Step step,
        @Nullable Category category,
        @Nullable String assignee,
        @Nullable String place,
        @Nullable String device,
        @Nullable DueWithin due,
        @Nullable Boolean held,
        boolean waiting,
        String text,
        Sorting sorting,
        @Nullable Cursor after,
        int size) {

    public QueueFilter {
        new Invalid.Collector()
                .require(size >= 1 && size <= 200, "size", "A page has 1 to 200 lines.")
                .require(assignee == null || PlainText.isText(assignee), "assignee", PlainText.WHAT_TO_DO)
                .require(place == null || PlainText.isText(place), "place", PlainText.WHAT_TO_DO)
                .require(device == null || PlainText.isText(device), "device", PlainText.WHAT_TO_DO)
                .require(
                        after == null || after.sorting().equals(sorting),
                        "after",
                        "This place is of a list in another order: begin at the first page.")
                .throwIfAny();
    }

    /** Begins a filter for tickets of that standing, the first due first. */
    public static Choice of(Standing standing) {
        return new Choice(standing);
    }

    /** A filter that is being put together. */
    public static final class Choice {
        private final Standing standing;
        private @Nullable Step step;
        private @Nullable Category category;
        private @Nullable String assignee;
        private @Nullable String place;
        private @Nullable String device;
        private @Nullable DueWithin due;
        private @Nullable Boolean held;
        private boolean waiting;
        private String text = "";
        private Sorting sorting = Sorting.DEFAULT;
        private @Nullable Cursor after;

        private Choice(Standing standing) {
            this.standing = standing;
        }

        public Choice step(@Nullable Step at) {
            step = at;
            return this;
        }

        public Choice category(@Nullable Category of) {
            category = of;
            return this;
        }

        public Choice assignee(@Nullable String account) {
            assignee = account;
            return this;
        }

        public Choice place(@Nullable String name) {
            place = name == null ? null : name.toLowerCase(Locale.ROOT);
            return this;
        }

        public Choice device(@Nullable String label) {
            device = label;
            return this;
        }

        public Choice due(@Nullable DueWithin within) {
            due = within;
            return this;
        }

        public Choice held(@Nullable Boolean onHold) {
            held = onHold;
            return this;
        }

        public Choice waiting(boolean something) {
            waiting = something;
            return this;
        }

        public Choice text(String words) {
            text = words;
            return this;
        }

        public Choice sorted(Sorting by) {
            sorting = by;
            return this;
        }

        public Choice after(@Nullable Cursor place) {
            after = place;
            return this;
        }

        /** @param size lines on a page, 1 to 200 */
        public QueueFilter lines(int size) {
            return new QueueFilter(
                    standing, step, category, assignee, place, device, due, held, waiting, text, sorting, after, size);
        }
    }
}
