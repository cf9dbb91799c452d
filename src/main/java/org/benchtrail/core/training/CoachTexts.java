package org.benchtrail.core.training;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.plan.PlanRequirement;
import org.benchtrail.core.method.test.TestRequirement;

/** The coach's texts: one for each requirement, and for nothing else. */
public final class CoachTexts {
    private static final Set<Requirement> SAFETY = Set.of(
            IdentifyRequirement.HAZARDS_SCREENED,
            IdentifyRequirement.DATA_PROTECTED,
            TestRequirement.INVASIVE_GUARDED,
            PlanRequirement.PLAN_APPROVED,
            PlanRequirement.CAUTIONS_TAKEN,
            PlanRequirement.DATA_STILL_PROTECTED);

    private final Map<String, CoachText> texts;

    /** @throws IllegalArgumentException if a requirement has no text or two, or a text is of no requirement */
    public CoachTexts(List<CoachText> all) {
        texts = new HashMap<>();
        for (CoachText text : all) {
            if (texts.put(text.code(), text) != null) {
                throw new IllegalArgumentException("two texts for " + text.code());
            }
        }
        Set<String> asked =
                Requirements.all().stream().map(Requirement::code).collect(Collectors.toCollection(TreeSet::new));
        Set<String> without = new TreeSet<>(asked);
        without.removeAll(texts.keySet());
        Set<String> unknown = new TreeSet<>(texts.keySet());
        unknown.removeAll(asked);
        if (!without.isEmpty() || !unknown.isEmpty()) {
            throw new IllegalArgumentException(
                    "requirements without a text: " + without + "; texts of no requirement: " + unknown);
        }
    }

    /** @throws IllegalArgumentException if there is no such requirement */
    public CoachText of(String code) {
        CoachText text = texts.get(code);
        if (text == null) {
            throw new IllegalArgumentException("no requirement " + code);
        }
        return text;
    }

    /** Whether it guards somebody, or somebody's data: such a one is never silent for a trainee. */
    public static boolean isOfSafety(Requirement requirement) {
        return SAFETY.contains(requirement);
    }
}
