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

    static List<Option> yesNo() {
        return Option.yesNo("yes", "no");
    }

    static List<Option> fits() {
        return Option.of(Fit.class);
    }

    static List<Option> settlements() {
        return Option.of(Settlement.class);
    }

    /** What else came of an action. */
    static List<Option> notCarriedOut() {
        return settlements().stream()
                .filter(o -> !o.value().equals(Settlement.CARRIED_OUT.name()))
                .toList();
    }
}
