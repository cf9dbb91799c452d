package org.benchtrail.ticket.bench;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.jspecify.annotations.Nullable;

/** Results of the bench on job sheets. */
@ApplicationScoped
public class BenchActs {
    private final TicketActs acts;
    private final TicketQueries look;

    BenchActs(TicketActs acts, TicketQueries look) {
        this.acts = acts;
        this.look = look;
    }

    /**
     * Attaches a result, with what it answers.
     *
     * @param version that the sheet must have; null to take it as it is: a calculation depends on nothing there
     * @param action whose part was checked; null if none
     * @throws Invalid if there is no such action, or the values are those of the example
     */
    @Transactional
    public Outcome attach(
            TicketNumber number, @Nullable Integer version, BenchRun run, @Nullable Integer action, Actor actor) {
        run.refuseExample();
        JobSheet sheet = look.ticket(number, actor).sheet();
        if (action != null && BenchQueries.parts(sheet).stream().noneMatch(a -> a.entry() == action)) {
            throw new Invalid("action", "Entry " + action + " is no planned action with a part: choose another.");
        }
        List<Act> facts = new ArrayList<>();
        for (Fact fact : run.facts(action, sheet.entries() + 1)) {
            if (!isKnown(sheet, fact)) {
                facts.add(s -> fact);
            }
        }
        return acts.perform(number, version == null ? sheet.entries() : version, facts, actor);
    }

    /** A drive-failure finding that is on the sheet word for word need not be there twice. */
    private static boolean isKnown(JobSheet sheet, Fact fact) {
        return fact instanceof FindingRecorded
                && Optional.of(fact).equals(sheet.latest(FindingRecorded.class).map(StandingFact::fact));
    }
}
