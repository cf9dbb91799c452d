package org.benchtrail.ticket.erasure;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.Difference;
import org.benchtrail.proposals.ProposedChange;
import org.benchtrail.ticket.RequesterErasure;

/** Who reported a ticket is to be erased. What is stored of the proposal names the ticket alone. */
@ApplicationScoped
class ErasureChange implements ProposedChange<ErasureChange.OfTicket> {
    private final RequesterErasure erasure;

    ErasureChange(RequesterErasure erasure) {
        this.erasure = erasure;
    }

    /** What is proposed. */
    record OfTicket(String ticket) {
        TicketNumber number() {
            return TicketNumber.parse(ticket);
        }
    }

    @Override
    public String name() {
        return "requester-erased";
    }

    @Override
    public Class<OfTicket> change() {
        return OfTicket.class;
    }

    @Override
    public String words(OfTicket change) {
        return "Erase name and contact of who reported ticket " + change.ticket;
    }

    @Override
    public List<Difference> differences(OfTicket change) {
        RequesterErasure.Kept kept = erasure.kept(change.number());
        new Invalid.Collector()
                .require(kept.erased() == null, "reason", "They are erased already.")
                .throwIfAny();
        String gone = kept.tickets() == 1 ? "" : " on " + kept.tickets() + " tickets";
        return List.of(
                new Difference("Name" + gone, kept.name(), ""), new Difference("Contact" + gone, kept.contact(), ""));
    }

    @Override
    public void requireReason(OfTicket change, String reason) {
        erasure.requireReason(change.number(), reason);
    }

    @Override
    public String make(OfTicket change, Agreement agreed) {
        erasure.eraseAgreed(change.number(), agreed.proposer(), agreed.confirmer(), agreed.note());
        return "/tickets/" + change.ticket + "/erasing";
    }
}
