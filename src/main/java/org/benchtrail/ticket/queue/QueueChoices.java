package org.benchtrail.ticket.queue;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.Sorting;

/** The answers that a new ticket and the filter of the queue ask for, as {@code queue:impacts} in templates. */
@TemplateExtension(namespace = "queue")
final class QueueChoices {
    private QueueChoices() {}

    static List<Option> categories() {
        return Option.of(Category.class);
    }

    static List<Option> impacts() {
        return Option.of(Priority.Impact.class);
    }

    static List<Option> urgencies() {
        return Option.of(Priority.Urgency.class);
    }

    static List<Option> steps() {
        return Option.of(Step.class);
    }

    /** What is open is the one that needs no choice. */
    static List<Option> ended() {
        return Option.of(Standing.class).stream()
                .filter(o -> !o.value().equals(Standing.OPEN.name()))
                .toList();
    }

    static List<Option> dues() {
        return List.of(
                new Option("over", "over"),
                new Option("today", "today"),
                new Option("week", "this week"),
                new Option("ahead", "ahead"));
    }

    static List<Option> holds() {
        return List.of(new Option("yes", "on hold"), new Option("no", "being worked"));
    }

    static List<Option> waits() {
        return List.of(new Option("yes", "for somebody's answer"));
    }

    /** All but the usual one. */
    static List<Option> orders() {
        return Sorting.all().stream()
                .filter(s -> !s.equals(Sorting.DEFAULT))
                .map(s -> new Option(s.token(), s.words()))
                .toList();
    }
}
