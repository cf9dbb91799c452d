package org.benchtrail.ticket.queue;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.platform.Option;

/** The answers that a new ticket asks for, as {@code queue:impacts} in templates. */
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
}
