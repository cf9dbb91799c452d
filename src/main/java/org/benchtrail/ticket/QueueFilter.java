package org.benchtrail.ticket;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Base64;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.text.PlainText;
import org.jspecify.annotations.Nullable;

/**
 * What part of the queue is asked for; null and empty mean 'any'.
 *
 * @param assignee account; {@code -} for what nobody has
 * @param held true for tickets on hold only, false for those that are not
 * @param text words to find in title, device, place, symptoms and cause
 * @param after where the page before ended
 * @param size lines on a page, 1 to 200
 */
public record QueueFilter(
        Standing standing,
        @Nullable Step step,
        @Nullable String assignee,
        @Nullable String place,
        @Nullable Boolean held,
        @Nullable Boolean overdue,
        String text,
        @Nullable Cursor after,
        int size) {

    public QueueFilter {
        new Invalid.Collector()
                .require(size >= 1 && size <= 200, "size", "A page has 1 to 200 lines.")
                .require(assignee == null || PlainText.isText(assignee), "assignee", PlainText.WHAT_TO_DO)
                .require(place == null || PlainText.isText(place), "place", PlainText.WHAT_TO_DO)
                .throwIfAny();
    }

    /** Place in the order by due time, then number. */
    public record Cursor(Instant due, int serial) {
        private static final Instant LAST = Instant.parse("9999-12-31T23:59:59Z");

        String token() {
            return Base64.getUrlEncoder()
                    .withoutPadding()
                    .encodeToString((due + " " + serial).getBytes(StandardCharsets.UTF_8));
        }

        /** @throws Invalid if the token was not made here */
        static @Nullable Cursor parse(@Nullable String token) {
            if (token == null || token.isEmpty()) {
                return null;
            }
            try {
                String text = new String(Base64.getUrlDecoder().decode(token), StandardCharsets.UTF_8);
                int space = text.indexOf(' ');
                Instant due = Instant.parse(text.substring(0, space));
                if (due.isBefore(Instant.EPOCH) || due.isAfter(LAST)) {
                    throw new IllegalArgumentException("no ticket was ever due then");
                }
                return new Cursor(due, Integer.parseInt(text.substring(space + 1)));
            } catch (RuntimeException e) {
                throw new Invalid("after", "This place in the list is not known: begin at the first page.");
            }
        }
    }
}
