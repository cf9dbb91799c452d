package org.benchtrail.exports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.paper.Paper;
import org.benchtrail.seal.PaperHead;
import org.benchtrail.seal.TrailFile;
import org.benchtrail.ticket.record.RecordView;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The record of a ticket as a file to keep. */
@Path("/tickets/{number}/record.pdf")
@Authenticated
public class RecordPaperPage {
    private final RecordPapers papers;
    private final TicketsGiven given;
    private final CurrentActor current;

    RecordPaperPage(RecordPapers papers, TicketsGiven given, CurrentActor current) {
        this.papers = papers;
        this.given = given;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/record")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance paper(RecordView v, PaperHead head, @Nullable TrailFile file);
    }

    /**
     * What is on the paper.
     *
     * @param file which the paper names; null while nothing is sealed
     */
    record RecordPaper(
            RecordView record, PaperHead head, @Nullable TrailFile file) {}

    @GET
    @Blocking
    public Response paper(@RestPath String number) {
        RecordPaper paper = papers.of(TicketNumber.parse(number), current.actor(), current.zone());
        given.note(TicketNumber.parse(number), "record as PDF", current.actor());
        return Response.ok(Paper.pdf(Templates.paper(paper.record(), paper.head(), paper.file())), Paper.MEDIA_TYPE)
                .header("Content-Disposition", "inline; filename=\"record-" + number + ".pdf\"")
                .build();
    }
}
