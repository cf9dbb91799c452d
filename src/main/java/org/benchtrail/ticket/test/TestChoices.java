package org.benchtrail.ticket.test;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.platform.Option;

/** The answers that the forms of test offer, as {@code test:outcomes} in templates. */
@TemplateExtension(namespace = "test")
final class TestChoices {
    private TestChoices() {}

    static List<Option> outcomes() {
        return Option.of(CheckOutcome.class);
    }
}
