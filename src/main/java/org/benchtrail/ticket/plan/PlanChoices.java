package org.benchtrail.ticket.plan;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.platform.Option;

/** The answers that the forms of plan offer, as {@code plan:fits} in templates. */
@TemplateExtension(namespace = "plan")
final class PlanChoices {
    private PlanChoices() {}

    static List<Option> maker() {
        return Option.yesNo("read", "none apply");
    }

    static List<Option> yesNo() {
        return Option.yesNo("yes", "no");
    }

    static List<Option> fits() {
        return Option.of(Fit.class);
    }

    static List<Option> settlements() {
        return Option.of(Settlement.class);
    }
}
