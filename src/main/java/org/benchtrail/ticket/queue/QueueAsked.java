package org.benchtrail.ticket.queue;

import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.platform.form.AskedFor;
import org.benchtrail.ticket.Cursor;
import org.benchtrail.ticket.DueWithin;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.Sorting;
import org.jspecify.annotations.Nullable;

/**
 * The filter of the queue as it was typed; empty is 'any', and what cannot be chosen is too.
 *
 * @param who account, {@code me}, or {@code -} for what nobody has
 * @param device label, exactly as it was given
 * @param due {@code over}, {@code ahead}, {@code today} or {@code week}
 * @param held {@code yes} or {@code no}
 * @param waits {@code yes} for what waits for somebody
 * @param standing empty for what is open
 * @param sort token of the order; empty for the first due first
 * @param after where the page before ended
 */
public record QueueAsked(
        String text,
        String step,
        String category,
        String who,
        String place,
        String device,
        String due,
        String held,
        String waits,
        String standing,
        String sort,
        String after) {

    /** @param viewer account of who is {@code me} */
    QueueFilter.Choice filter(String viewer, Instant now, ZoneId zone) {
        return QueueFilter.of(wanted())
                .step(AskedFor.choice(Step.class, step))
                .category(AskedFor.choice(Category.class, category))
                .assignee(who.equals("me") ? viewer : unlessEmpty(who))
                .place(unlessEmpty(place))
                .device(unlessEmpty(device))
                .due(within(now, zone))
                .held(held.isEmpty() ? null : Boolean.valueOf(held.equals("yes")))
                .waiting(waits.equals("yes"))
                .text(text)
                .sorted(sorting());
    }

    private @Nullable DueWithin within(Instant now, ZoneId zone) {
        return switch (due) {
            case "over" -> DueWithin.past(now);
            case "ahead" -> DueWithin.future(now);
            case "today" -> DueWithin.day(now, zone);
            case "week" -> DueWithin.week(now, zone);
            default -> null;
        };
    }

    Standing wanted() {
        return Objects.requireNonNullElse(AskedFor.choice(Standing.class, standing), Standing.OPEN);
    }

    Sorting sorting() {
        return Sorting.parse(sort).orElse(Sorting.DEFAULT);
    }

    /** Where the page begins; null at the start. */
    @Nullable
    Cursor begin() {
        return Cursor.parse(after);
    }

    public boolean isFiltered() {
        return !(step + category + who + place + device + due + held + waits + text).isEmpty()
                || wanted() != Standing.OPEN;
    }

    /** What was asked for, without a place in it, as it stands in an address. */
    public String query() {
        Map<String, String> asked = new LinkedHashMap<>();
        asked.put("text", text);
        asked.put("step", step);
        asked.put("category", category);
        asked.put("who", who);
        asked.put("place", place);
        asked.put("device", device);
        asked.put("due", due);
        asked.put("held", held);
        asked.put("waits", waits);
        asked.put("standing", standing);
        asked.put("sort", sort);
        return AskedFor.query(asked);
    }

    /** Address of the page after the one that ends with {@code token}. */
    String next(String token) {
        String query = query();
        return "/queue?" + (query.isEmpty() ? "" : query + "&") + "after=" + token;
    }

    private static @Nullable String unlessEmpty(String text) {
        return text.isEmpty() ? null : text;
    }
}
