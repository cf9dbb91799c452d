package org.benchtrail.ticket.attachment;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.identify.MarkedPicture;

/**
 * A picture with its marks.
 *
 * @param version of the sheet
 * @param added by whom and when
 * @param deviceTime when the original was made, as the device says; empty if it does not
 * @param scaledFrom size of the original; empty if the picture came as it was
 * @param link to the file itself
 * @param marking whether the viewer may mark it
 */
public record PictureView(
        String number,
        int version,
        String fileName,
        String added,
        String deviceTime,
        String scaledFrom,
        String link,
        MarkedPicture picture,
        List<Line> marks,
        boolean marking) {

    /** A mark in words. */
    public record Line(int entry, String words, String stamp) {}

    /** @throws NotFound if no picture was attached by that entry */
    static PictureView of(JobSheet sheet, int entry, Actor viewer, ZoneId zone, Map<String, String> names) {
        String number = sheet.opened().ticket();
        StandingFact<AttachmentAdded> file = sheet.all(AttachmentAdded.class, a -> a.entry() == entry).stream()
                .findFirst()
                .orElseThrow(() -> missing(entry, number));
        MarkedPicture picture = MarkedPicture.of(file, sheet).orElseThrow(() -> missing(entry, number));
        AttachmentAdded fact = file.fact();
        return new PictureView(
                number,
                sheet.entries(),
                fact.fileName(),
                stamp(file, zone, names),
                fact.deviceTime() == null ? "" : Times.text(fact.deviceTime(), zone),
                fact.scaledFrom() == null ? "" : fact.scaledFrom(),
                "/tickets/" + number + "/attachments/" + fact.sha256(),
                picture,
                picture.marks().stream()
                        .map(m -> new Line(m.entry(), MarkedPicture.words(m.fact()), stamp(m, zone, names)))
                        .toList(),
                sheet.course().isOpen() && viewer.works());
    }

    private static NotFound missing(int entry, String ticket) {
        return new NotFound("picture of entry " + entry + " on ticket " + ticket);
    }

    private static String stamp(StandingFact<?> fact, ZoneId zone, Map<String, String> names) {
        return Viewing.who(fact.stamp(), names) + ", " + Times.text(fact.stamp().at(), zone);
    }

    /** What a mark can be. */
    public List<Option> kinds() {
        return MarkForm.KINDS;
    }
}
