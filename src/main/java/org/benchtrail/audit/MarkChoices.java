package org.benchtrail.audit;

import io.quarkus.qute.TemplateExtension;
import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.platform.Option;

/** The words of the choices in an audit. */
@TemplateExtension(namespace = "marks")
final class MarkChoices {
    private MarkChoices() {}

    static List<Option> all() {
        return Arrays.stream(Mark.values())
                .map(m -> new Option(m.name(), m.words()))
                .toList();
    }

    static List<Option> classes() {
        return Arrays.stream(DefectClass.values())
                .map(c -> new Option(c.name(), c.words()))
                .toList();
    }
}
