package org.benchtrail.ticket.verify;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.platform.Option;

/** The answers that the form of verify offers, as {@code verify:gone} in templates. */
@TemplateExtension(namespace = "verify")
final class VerifyChoices {
    private VerifyChoices() {}

    static List<Option> gone() {
        return Option.yesNo("gone", "still there");
    }

    static List<Option> functions() {
        return Option.of(ItemState.class);
    }

    static List<Option> requester() {
        return Option.of(RequesterState.class);
    }
}
