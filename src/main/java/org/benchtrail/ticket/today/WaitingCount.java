package org.benchtrail.ticket.today;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;

/** For the band of every page: how many things wait for the person who is signed in; in templates {@code inject:waiting}. */
@RequestScoped
@Named("waiting")
public class WaitingCount {
    private final WaitBook waits;
    private final CurrentActor current;

    WaitingCount(WaitBook waits, CurrentActor current) {
        this.waits = waits;
        this.current = current;
    }

    public long count() {
        return current.may(Permission.SEE_TICKETS) ? waits.count(current.actor()) : 0;
    }
}
