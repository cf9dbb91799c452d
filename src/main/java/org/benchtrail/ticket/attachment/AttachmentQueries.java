package org.benchtrail.ticket.attachment;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.TicketQueries;

/** What can be read of the files kept beside tickets. */
@ApplicationScoped
@Transactional
public class AttachmentQueries {
    private final TicketQueries tickets;
    private final Attachments attachments;

    AttachmentQueries(TicketQueries tickets, Attachments attachments) {
        this.tickets = tickets;
        this.attachments = attachments;
    }

    /** The file with that hash, if it is attached to that ticket. */
    public byte[] file(TicketNumber number, String sha256, Actor actor) {
        boolean attached = tickets.ticket(number, actor).sheet().all(AttachmentAdded.class).stream()
                .anyMatch(a -> a.fact().sha256().equals(sha256));
        if (!attached) {
            throw new NotFound("such file on ticket " + number);
        }
        return attachments.findById(sha256).content;
    }
}
