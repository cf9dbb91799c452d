package org.benchtrail.ticket.theorize;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.theorize.TheoryStated;

/** A theory of the ticket, and how it stands. */
public record TheoryView(int entry, String text, State state) {

    public enum State {
        OPEN("open"),
        ACTIVE("active"),
        RULED_OUT("ruled out"),
        /** The ticket ended with it. */
        BORNE_OUT("borne out"),
        /** The ticket ended with it, and names another cause. */
        OTHER_CAUSE("borne out by its check; another cause is named"),
        /** The ticket ended without an answer to it. */
        LEFT_OPEN("left open");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Every theory in the order of stating. */
    public static List<TheoryView> all(JobSheet sheet) {
        int active = sheet.activeTheory().map(StandingFact::entry).orElse(0);
        Set<Integer> out = sheet.ruledOut().stream().map(StandingFact::entry).collect(Collectors.toSet());
        return sheet.all(TheoryStated.class).stream()
                .map(t -> new TheoryView(t.entry(), t.fact().text(), state(t, active, out, sheet)))
                .toList();
    }

    private static State state(StandingFact<TheoryStated> theory, int active, Set<Integer> out, JobSheet sheet) {
        if (theory.entry() == active) {
            return ofActive(theory.fact(), sheet);
        }
        State otherwise = sheet.course().isOpen() ? State.OPEN : State.LEFT_OPEN;
        return out.contains(theory.entry()) ? State.RULED_OUT : otherwise;
    }

    private static State ofActive(TheoryStated theory, JobSheet sheet) {
        return switch (sheet.course().standing()) {
            case OPEN -> State.ACTIVE;
            case CLOSED -> isNamed(theory, sheet) ? State.BORNE_OUT : State.OTHER_CAUSE;
            case CANCELLED -> State.LEFT_OPEN;
        };
    }

    private static boolean isNamed(TheoryStated theory, JobSheet sheet) {
        return sheet.latestOfRound(CauseNamed.class)
                .map(StandingFact::fact)
                .filter(named -> named.cause().equalsIgnoreCase(theory.text())
                        || (named.causeId() != null && named.causeId().equals(theory.causeId())))
                .isPresent();
    }

    public boolean isOpen() {
        return state == State.OPEN;
    }

    public boolean isRuledOut() {
        return state == State.RULED_OUT;
    }
}
