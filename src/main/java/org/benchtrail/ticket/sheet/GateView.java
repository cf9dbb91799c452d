package org.benchtrail.ticket.sheet;

import java.util.List;
import java.util.Locale;
import org.benchtrail.core.method.Requirement;

/**
 * What must be true before the step is left.
 *
 * @param missing how many requirements are
 */
public record GateView(List<Line> lines, long missing) {

    /**
     * A requirement.
     *
     * @param waivable whether a waiver is offered to the viewer
     * @param askable whether the viewer may ask for one
     */
    public record Line(
            String code, String title, String text, Requirement.State state, boolean waivable, boolean askable) {
        public boolean isMissing() {
            return state == Requirement.State.MISSING;
        }

        public boolean isWaived() {
            return state == Requirement.State.WAIVED;
        }

        /** The state as the stylesheet knows it. */
        public String css() {
            return state.name().toLowerCase(Locale.ROOT);
        }

        /** The state as a sign beside the text. */
        public String sign() {
            return switch (state) {
                case MET -> "\u2713";
                case WAIVED -> "\u2248";
                case MISSING -> "\u25cb";
            };
        }
    }

    /** Whether the requirement of that code is missing. */
    public boolean isMissing(String code) {
        return lines.stream().anyMatch(line -> line.isMissing() && line.code().equals(code));
    }

    /**
     * As the viewer sees it.
     *
     * @param waiving whether the viewer may waive at all
     * @param asking whether the viewer may ask for a waiver
     */
    static GateView of(List<Requirement.Status> gate, boolean waiving, boolean asking) {
        List<Line> lines = gate.stream().map(s -> line(s, waiving, asking)).toList();
        return new GateView(lines, lines.stream().filter(Line::isMissing).count());
    }

    private static Line line(Requirement.Status status, boolean waiving, boolean asking) {
        Requirement requirement = status.requirement();
        boolean missing = status.state() == Requirement.State.MISSING;
        boolean open = missing && requirement.waivable();
        return new Line(
                requirement.code(),
                requirement.title(),
                missing ? status.sentence() : requirement.title(),
                status.state(),
                waiving && open,
                asking && open);
    }
}
