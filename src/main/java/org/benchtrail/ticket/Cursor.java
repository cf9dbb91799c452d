package org.benchtrail.ticket;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Base64;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Priority;
import org.jspecify.annotations.Nullable;

/** The place of a ticket in an order of the queue, so that the next page begins after it whatever changed before it. */
public record Cursor(Sorting sorting, Priority priority, Instant due, Instant touched, int serial) {
    private static final Instant LAST = Instant.parse("9999-12-31T23:59:59Z");

    public static Cursor of(TicketLine line, Sorting sorting) {
        return new Cursor(sorting, line.priority(), line.due(), line.touched(), line.serial());
    }

    public String token() {
        String text = String.join(
                " ", sorting.token(), priority.name(), due.toString(), touched.toString(), Integer.toString(serial));
        return Base64.getUrlEncoder().withoutPadding().encodeToString(text.getBytes(StandardCharsets.UTF_8));
    }

    /** @throws Invalid if the token was not made here */
    public static @Nullable Cursor parse(@Nullable String token) {
        if (token == null || token.isEmpty()) {
            return null;
        }
        try {
            String[] parts = new String(Base64.getUrlDecoder().decode(token), StandardCharsets.UTF_8).split(" ", -1);
            return new Cursor(
                    Sorting.parse(parts[0]).orElseThrow(),
                    Priority.valueOf(parts[1]),
                    moment(parts[2]),
                    moment(parts[3]),
                    Integer.parseInt(parts[4]));
        } catch (RuntimeException e) {
            throw new Invalid("after", "This place in the list is not known: begin at the first page.");
        }
    }

    private static Instant moment(String text) {
        Instant moment = Instant.parse(text);
        if (moment.isBefore(Instant.EPOCH) || moment.isAfter(LAST)) {
            throw new IllegalArgumentException("no ticket was ever due or touched then");
        }
        return moment;
    }

    /** What {@link Sorting#after} asks for, by name. */
    Map<String, Object> values() {
        return switch (sorting.by()) {
            case DUE -> Map.of("due", due, "serial", serial);
            case NUMBER -> Map.of("serial", serial);
            case PRIORITY -> Map.of("rank", priority.ordinal(), "due", due, "serial", serial);
            case TOUCHED -> Map.of("touched", touched, "serial", serial);
        };
    }
}
