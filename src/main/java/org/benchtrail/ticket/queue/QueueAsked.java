package org.benchtrail.ticket.queue;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.ticket.QueueFilter;
import org.jspecify.annotations.Nullable;

/**
 * The filter of the queue as it was typed; empty is 'any', and what cannot be chosen is too.
 *
 * @param who account, {@code me}, or {@code -} for what nobody has
 * @param due {@code over} or {@code ahead}
 * @param held {@code yes} or {@code no}
 * @param standing empty for what is open
 * @param after where the page before ended
 */
public record QueueAsked(
        String step, String who, String place, String due, String held, String text, String standing, String after) {
    private static final int LINES = 25;

    /** @param viewer account of who is {@code me} */
    QueueFilter filter(String viewer) {
        return new QueueFilter(
                wanted(),
                choice(Step.class, step),
                who.equals("me") ? viewer : unlessEmpty(who),
                unlessEmpty(place),
                held.isEmpty() ? null : Boolean.valueOf(held.equals("yes")),
                due.isEmpty() ? null : Boolean.valueOf(due.equals("over")),
                text,
                QueueFilter.Cursor.parse(after),
                LINES);
    }

    Standing wanted() {
        return Objects.requireNonNullElse(choice(Standing.class, standing), Standing.OPEN);
    }

    public boolean isFiltered() {
        return !(step + who + place + due + held + text).isEmpty() || wanted() != Standing.OPEN;
    }

    /** Address of the page after the one that ends with {@code token}. */
    String next(String token) {
        return "/queue?step=" + url(step) + "&who=" + url(who) + "&place=" + url(place) + "&due=" + url(due) + "&held="
                + url(held) + "&text=" + url(text) + "&standing=" + wanted() + "&after=" + token;
    }

    private static <E extends Enum<E>> @Nullable E choice(Class<E> choices, String name) {
        return Arrays.stream(choices.getEnumConstants())
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElse(null);
    }

    private static @Nullable String unlessEmpty(String text) {
        return text.isEmpty() ? null : text;
    }

    private static String url(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
