package org.benchtrail.ticket.document;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.platform.Option;

/** The answers that the form of document offers, as {@code document:lessons} in templates. */
@TemplateExtension(namespace = "document")
final class DocumentChoices {
    private DocumentChoices() {}

    static List<Option> sureness() {
        return Option.of(Sureness.class);
    }

    static List<Option> lessons() {
        return Option.of(Lesson.class);
    }
}
