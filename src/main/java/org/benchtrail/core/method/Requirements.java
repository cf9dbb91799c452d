package org.benchtrail.core.method;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.method.document.DocumentRequirement;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.method.test.TestRequirement;
import org.benchtrail.core.method.theorize.TheorizeRequirement;
import org.benchtrail.core.method.verify.VerifyRequirement;

/** The table of requirements, in the order of the steps. */
public final class Requirements {
    private static final List<Requirement> ALL = Stream.<Requirement[]>of(
                    IdentifyRequirement.values(),
                    TheorizeRequirement.values(),
                    TestRequirement.values(),
                    PlanRequirement.values(),
                    VerifyRequirement.values(),
                    DocumentRequirement.values())
            .flatMap(Stream::of)
            .toList();

    private Requirements() {}

    public static List<Requirement> all() {
        return ALL;
    }

    public static Optional<Requirement> of(String code) {
        return ALL.stream().filter(r -> r.isNamed(code)).findFirst();
    }

    public static List<Requirement> of(Step step) {
        return ALL.stream().filter(r -> r.step() == step).toList();
    }
}
