package org.benchtrail.ticket.attachment;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.room.Disk;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;

/** Files put beside tickets. */
@ApplicationScoped
public class AttachmentActs {
    private final TicketActs tickets;
    private final Attachments attachments;
    private final Disk disk;

    AttachmentActs(TicketActs tickets, Attachments attachments, Disk disk) {
        this.disk = disk;
        this.tickets = tickets;
        this.attachments = attachments;
    }

    /**
     * Keeps files and notes them on the ticket, and then does the acts: all or none, as {@link TicketActs#perform}. Of a refused request the bytes stay behind, named by nothing.
     */
    @Transactional
    public Outcome performWithFiles(
            TicketNumber number, int version, List<NewFile> files, List<? extends Act> acts, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        disk.requireRoomForFiles();
        List<Act> all = new ArrayList<>();
        files.forEach(file -> all.add(noted(file)));
        all.addAll(acts);
        return tickets.perform(number, version, all, actor);
    }

    private Act noted(NewFile file) {
        Pictures.requireShowable(file.content());
        AttachmentAdded added = new AttachmentAdded(
                file.name(),
                file.mediaType(),
                file.content().length,
                attachments.keep(file.content()),
                file.shows(),
                file.deviceTime(),
                file.scaledFrom());
        return sheet -> added;
    }

    /** Keeps the bytes of a file and notes it on the ticket. */
    @Transactional
    public Outcome attach(TicketNumber number, int version, NewFile file, Actor actor) {
        return performWithFiles(number, version, List.of(file), List.of(), actor);
    }
}
