package org.benchtrail.ticket.identify;

import io.quarkus.qute.RawString;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.PictureMarked;
import org.benchtrail.platform.chart.SvgMarks;
import org.jspecify.annotations.Nullable;

/**
 * A picture among the attached files, with what was marked on it.
 *
 * @param page where it is shown large and marked
 * @param small address of a small one of it
 * @param large address of one that fills the page
 * @param marks that were put on it and not withdrawn
 * @param size on paper; null on a screen
 */
public record MarkedPicture(
        int entry,
        String sha256,
        String shows,
        String page,
        String small,
        String large,
        List<StandingFact<PictureMarked>> marks,
        SvgMarks.@Nullable Size size) {

    /** Empty if the file is no picture. */
    public static Optional<MarkedPicture> of(StandingFact<AttachmentAdded> file, JobSheet sheet) {
        AttachmentAdded fact = file.fact();
        if (!fact.showsPicture()) {
            return Optional.empty();
        }
        String ticket = "/tickets/" + sheet.opened().ticket();
        String picture = ticket + "/attachments/" + fact.sha256() + "/picture";
        return Optional.of(new MarkedPicture(
                file.entry(),
                fact.sha256(),
                fact.shows(),
                ticket + "/pictures/" + file.entry(),
                picture,
                picture + "?size=large",
                sheet.all(PictureMarked.class, m -> m.fact().picture() == file.entry()),
                null));
    }

    /** @param content address of a small one of it that holds the picture itself */
    public MarkedPicture onPaper(String content, SvgMarks.Size paper) {
        return new MarkedPicture(entry, sha256, shows, page, content, content, marks, paper);
    }

    /** Opening as a file, without the page that says who marked what. */
    public MarkedPicture alone() {
        return new MarkedPicture(entry, sha256, shows, large, small, large, marks, size);
    }

    /** The marks, to lie over it; null if there are none. */
    public @Nullable RawString drawing() {
        return marks.isEmpty()
                ? null
                : SvgMarks.draw(
                        marks.stream().map(MarkedPicture::drawn).toList(),
                        "Marked on it: "
                                + marks.stream().map(m -> words(m.fact())).collect(Collectors.joining("; ")) + ".",
                        size);
    }

    private static SvgMarks.Mark drawn(StandingFact<PictureMarked> mark) {
        PictureMarked m = mark.fact();
        return new SvgMarks.Mark(
                "mark" + mark.entry(), shape(m.mark()), m.fromX(), m.fromY(), m.toX(), m.toY(), m.text());
    }

    private static SvgMarks.Shape shape(MarkKind kind) {
        return switch (kind) {
            case ARROW -> SvgMarks.Shape.ARROW;
            case CIRCLE -> SvgMarks.Shape.CIRCLE;
            case TEXT -> SvgMarks.Shape.WORDS;
        };
    }

    /** A mark in words. */
    public static String words(PictureMarked mark) {
        return mark.mark().words() + (mark.text().isEmpty() ? "" : " '" + mark.text() + "'");
    }
}
