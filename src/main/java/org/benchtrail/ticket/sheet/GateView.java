package org.benchtrail.ticket.sheet;

import java.util.List;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Step;
import org.jspecify.annotations.Nullable;

/**
 * What must be true before the step is left.
 *
 * @param missing how many requirements are
 * @param next the step after this one; null after the last
 */
public record GateView(
        List<Line> lines, long missing, @Nullable Step next) {

    /**
     * A requirement.
     *
     * @param waivable whether a waiver is offered to the viewer
     * @param askable whether the viewer may ask for one
     */
    public record Line(
            String code, String word, String text, Requirement.State state, boolean waivable, boolean askable) {
        public boolean isMissing() {
            return state == Requirement.State.MISSING;
        }

        public boolean isWaived() {
            return state == Requirement.State.WAIVED;
        }

        /** The state as a sign beside the text; what is missing has a mark without one. */
        public String sign() {
            return switch (state) {
                case MET -> "\u2713";
                case WAIVED -> "\u2248";
                case MISSING -> "";
            };
        }

        /** The state in words. */
        public String said() {
            return switch (state) {
                case MET -> "answered";
                case WAIVED -> "waived";
                case MISSING -> "still open";
            };
        }
    }

    /** Whether the requirement of that code is missing. */
    public boolean isMissing(String code) {
        return lines.stream().anyMatch(line -> line.isMissing() && line.code().equals(code));
    }

    /** The requirement of that code; null where the step does not ask for it. */
    public @Nullable Line line(String code) {
        return lines.stream()
                .filter(line -> line.code().equals(code))
                .findFirst()
                .orElse(null);
    }

    /** Where the way is open to. */
    public String onwards() {
        return next == null ? "You can close the ticket." : "You can go to " + next.title() + ".";
    }

    /** What is missing. */
    public List<Line> open() {
        return lines.stream().filter(Line::isMissing).toList();
    }

    /**
     * As the viewer sees it.
     *
     * @param waiving whether the viewer may waive at all
     * @param asking whether the viewer may ask for a waiver
     */
    static GateView of(List<Requirement.Status> gate, Step step, boolean waiving, boolean asking) {
        List<Line> lines = gate.stream().map(s -> line(s, waiving, asking)).toList();
        return new GateView(
                lines, lines.stream().filter(Line::isMissing).count(), step == Step.DOCUMENT ? null : step.next());
    }

    private static Line line(Requirement.Status status, boolean waiving, boolean asking) {
        Requirement requirement = status.requirement();
        boolean missing = status.state() == Requirement.State.MISSING;
        boolean open = missing && requirement.waivable();
        return new Line(
                requirement.code(),
                requirement.word(),
                missing ? status.sentence() : requirement.title(),
                status.state(),
                waiving && open,
                asking && open);
    }
}
