package org.benchtrail.exports;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.ZoneId;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.exports.RecordPaperPage.RecordPaper;
import org.benchtrail.seal.Heads;
import org.benchtrail.seal.PaperHead;
import org.benchtrail.seal.TrailFiles;
import org.benchtrail.ticket.record.RecordQueries;

/** All that the paper of a record shows, read in one transaction. */
@ApplicationScoped
class RecordPapers {
    private final RecordQueries records;
    private final Heads heads;
    private final TrailFiles files;

    RecordPapers(RecordQueries records, Heads heads, TrailFiles files) {
        this.records = records;
        this.heads = heads;
        this.files = files;
    }

    @Transactional
    RecordPaper of(TicketNumber number, Actor viewer, ZoneId zone) {
        RecordQueries.Written written = records.paper(number, viewer, zone);
        PaperHead head = heads.onPaper(zone);
        return new RecordPaper(
                written.view(),
                head,
                files.at(head.size(), number.toString(), written.trail()).orElse(null));
    }
}
