package org.benchtrail.ticket.attachment;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.ZoneId;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.http.FileAnswer;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.trail.Alarms;

/** What can be read of the files kept beside tickets. */
@ApplicationScoped
@Transactional
public class AttachmentQueries {
    private final TicketQueries tickets;
    private final Attachments attachments;
    private final Alarms alarms;
    private final Directory people;

    AttachmentQueries(TicketQueries tickets, Attachments attachments, Alarms alarms, Directory people) {
        this.people = people;
        this.alarms = alarms;
        this.tickets = tickets;
        this.attachments = attachments;
    }

    /** @throws NotFound if no picture was attached by that entry */
    PictureView picture(TicketNumber number, int entry, Actor viewer, ZoneId zone) {
        JobSheet sheet = tickets.ticket(number, viewer).sheet();
        return PictureView.of(sheet, entry, viewer, zone, people.names(Viewing.accounts(sheet)));
    }

    /**
     * The file with that hash, if it is attached to that ticket.
     *
     * @throws RecordBroken if its bytes are not those that were attached; an alarm is recorded
     */
    public byte[] file(TicketNumber number, String sha256, Actor actor) {
        return answer(number, sha256, actor).content();
    }

    /** As {@link #file}, with the name and the media type under which it was attached last. */
    public FileAnswer answer(TicketNumber number, String sha256, Actor actor) {
        AttachmentAdded attached = tickets.ticket(number, actor).sheet().all(AttachmentAdded.class).stream()
                .map(StandingFact::fact)
                .filter(fact -> fact.sha256().equals(sha256))
                .reduce((first, second) -> second)
                .orElseThrow(() -> new NotFound("such file on ticket " + number));
        Attachment kept = attachments.findById(sha256);
        if (kept == null || !Attachments.sha256(kept.content).equals(sha256)) {
            String fault = kept == null ? "is gone" : "was altered since it was attached";
            alarms.found(number, false, "A file " + fault + ".", sha256, actor.account());
            throw new RecordBroken("The file " + fault + ", and is not given out.");
        }
        return new FileAnswer(attached.fileName(), attached.mediaType(), kept.content, sha256);
    }
}
