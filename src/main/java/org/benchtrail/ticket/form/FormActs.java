package org.benchtrail.ticket.form;

import jakarta.enterprise.context.ApplicationScoped;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketLimits;

/** Does what the forms of the job sheet ask for. */
@ApplicationScoped
public class FormActs {
    private final TicketActs tickets;
    private final Diagnoses diagnoses;
    private final TicketLimits limits;
    private final CurrentActor current;

    FormActs(TicketActs tickets, Diagnoses diagnoses, TicketLimits limits, CurrentActor current) {
        this.tickets = tickets;
        this.diagnoses = diagnoses;
        this.limits = limits;
        this.current = current;
    }

    /** The form is read by the sheet on which its acts are done, so that the trail is replayed once. */
    public Outcome perform(TicketNumber ticket, SheetForm form, PostedForm posted) {
        return tickets.perform(
                ticket, posted.version(), sheet -> form.read(posted, sheet, context(sheet)), current.actor());
    }

    private FormContext context(JobSheet sheet) {
        return new FormContext(diagnoses.category(sheet), limits.of(sheet), current.zone());
    }
}
