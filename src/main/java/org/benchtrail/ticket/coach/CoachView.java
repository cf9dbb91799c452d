package org.benchtrail.ticket.coach;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.training.CoachLevel;
import org.benchtrail.core.training.CoachText;
import org.benchtrail.core.training.CoachTexts;
import org.jspecify.annotations.Nullable;

/**
 * What the coach says beside the requirements of a step. Everything stands beside the form: nothing of it has to be opened, closed or
 * answered, and the gate's own sentence is said with it or without.
 *
 * @param lines by the code of the requirement; empty where nobody is coached
 */
public record CoachView(Map<String, Line> lines) {
    public static final CoachView NONE = new CoachView(Map.of());

    public CoachView {
        lines = Map.copyOf(lines);
    }

    /**
     * Beside one requirement.
     *
     * @param lead what stands there folded: why at the upper levels, what is good at the prompt, nothing when silent; where people or
     *     data are guarded, what is good at each
     * @param safety whether it guards people or data: it is nowhere cut short
     * @param examples whether examples may be told
     */
    public record Line(
            String code, String word, CoachLevel level, String lead, boolean safety, boolean examples, CoachText text) {

        /** Whether a part of the example is left to whoever does the job. */
        public boolean blank() {
            return level == CoachLevel.COMPLETION;
        }

        /** Whether what is good is told once it is unfolded: not where it stands there already. */
        public boolean tellsGood() {
            return (level == CoachLevel.EXAMPLE && !safety) || silent();
        }

        public boolean silent() {
            return level == CoachLevel.SILENT;
        }

        /** Whether the folded line is the reason. */
        public boolean reasoned() {
            return !safety && (level == CoachLevel.COMPLETION || level == CoachLevel.EXAMPLE);
        }
    }

    /** What stands beside the requirement of that code; null if nothing does. */
    public @Nullable Line of(String code) {
        return lines.get(code);
    }

    /**
     * @param gate what the step asks for
     * @param levels by code
     * @param veiled whether the viewer's forecast is due: until it is made, no example of a theory is told
     */
    static CoachView of(
            List<Requirement.Status> gate, Map<String, CoachLevel> levels, CoachTexts texts, boolean veiled) {
        Map<String, Line> lines = new LinkedHashMap<>();
        for (Requirement.Status status : gate) {
            Requirement requirement = status.requirement();
            CoachLevel level = levels.getOrDefault(requirement.code(), CoachLevel.EXAMPLE);
            boolean told = !(veiled && requirement.step() == Step.THEORIZE);
            lines.put(requirement.code(), line(requirement, level, texts.of(requirement.code()), told));
        }
        return new CoachView(lines);
    }

    private static Line line(Requirement requirement, CoachLevel level, CoachText text, boolean told) {
        boolean safety = CoachTexts.isOfSafety(requirement);
        String lead = switch (level) {
            case EXAMPLE, COMPLETION -> safety ? text.good() : text.why();
            case PROMPT -> text.good();
            case SILENT -> "";
        };
        return new Line(requirement.code(), requirement.word(), level, lead, safety, told, text);
    }
}
