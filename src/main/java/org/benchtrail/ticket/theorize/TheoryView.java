package org.benchtrail.ticket.theorize;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.theorize.TheoryStated;

/** A theory of the ticket, and how it stands. */
public record TheoryView(int entry, String text, State state) {

    public enum State {
        OPEN("open"),
        ACTIVE("active"),
        RULED_OUT("ruled out");

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
                .map(t -> new TheoryView(t.entry(), t.fact().text(), state(t.entry(), active, out)))
                .toList();
    }

    private static State state(int entry, int active, Set<Integer> out) {
        if (entry == active) {
            return State.ACTIVE;
        }
        return out.contains(entry) ? State.RULED_OUT : State.OPEN;
    }

    public boolean isOpen() {
        return state == State.OPEN;
    }

    public boolean isRuledOut() {
        return state == State.RULED_OUT;
    }
}
