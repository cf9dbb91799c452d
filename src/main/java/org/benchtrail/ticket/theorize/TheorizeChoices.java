package org.benchtrail.ticket.theorize;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.benchtrail.core.method.theorize.Inspection;
import org.benchtrail.core.method.theorize.Obvious;
import org.benchtrail.platform.Option;

/** The answers that the form of theorize offers, as {@code theorize:looks} in templates. */
@TemplateExtension(namespace = "theorize")
final class TheorizeChoices {
    private TheorizeChoices() {}

    static List<Option> obvious() {
        return Option.of(Obvious.class);
    }

    static List<Option> looks() {
        return Option.of(Inspection.class);
    }
}
