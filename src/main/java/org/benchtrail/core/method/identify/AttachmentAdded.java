package org.benchtrail.core.method.identify;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A file kept beside the ticket; the bytes are stored once and named by their SHA-256.
 *
 * @param deviceTime when the original was taken, as the camera noted in it, or else last written, by the clock of the device that
 *     sent it; nobody has checked that; null if it told none
 * @param scaledFrom size of the original in points, such as {@code 4032 x 3024}, where the browser sent a smaller copy; null if
 *     the file came as it was
 */
public record AttachmentAdded(
        @FreeText String fileName,
        String mediaType,
        long bytes,
        String sha256,
        @FreeText String shows,
        @Later @Nullable Instant deviceTime,
        @Later @Nullable String scaledFrom)
        implements EvidenceFact {
    private static final Set<String> PICTURES = Set.of("image/jpeg", "image/png", "image/gif", "image/bmp");

    /** Longer than any file's clock is wrong, and within what every calendar can write. */
    private static final Instant LATEST = Instant.parse("9999-12-31T00:00:00Z");

    public AttachmentAdded {
        FieldChecks t = new FieldChecks();
        fileName = t.required("fileName", fileName, FieldChecks.LINE, "The file needs a name.");
        mediaType = t.required("mediaType", mediaType, FieldChecks.LINE, "The file needs a media type.");
        t.require(bytes > 0, "file", "The file is empty: choose another.");
        // beyond, a number of the canonical form would not be exact
        t.require(bytes <= 1L << 53, "bytes", "No file is that large.");
        t.require(sha256 != null && sha256.matches("[0-9a-f]{64}"), "sha256", "A SHA-256 is 64 hexadecimal digits.");
        shows = t.required("shows", shows, FieldChecks.LINE, "Say what the file shows.");
        t.require(
                deviceTime == null || isDeviceTime(deviceTime),
                "deviceTime",
                "The time of the file lies between 1970 and 9999.");
        scaledFrom = t.orNull("scaledFrom", scaledFrom, 20);
        t.require(
                scaledFrom == null || scaledFrom.matches("[1-9]\\d{0,5} x [1-9]\\d{0,5}"),
                "scaledFrom",
                "A size is written as 4032 x 3024.");
        t.done();
    }

    /** Whether a device may say that of a file; other times are no times of files. */
    public static boolean isDeviceTime(Instant time) {
        return !time.isBefore(Instant.EPOCH) && time.isBefore(LATEST);
    }

    /** A file that came as it was, from a device that told no time. */
    public AttachmentAdded(String fileName, String mediaType, long bytes, String sha256, String shows) {
        this(fileName, mediaType, bytes, sha256, shows, null, null);
    }

    /** Whether it can be shown, by what it was said to be. */
    public boolean showsPicture() {
        return PICTURES.stream().anyMatch(mediaType::startsWith);
    }

    @Override
    public boolean countsAsEvidence() {
        return true;
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    /** Marks stay on the picture that they were put on. */
    @Override
    public List<Missing> keptFrom(JobSheet sheet, StandingFact<?> self, @Nullable Fact replacement, Actor actor) {
        boolean same =
                replacement instanceof AttachmentAdded other && other.sha256.equals(sha256) && other.showsPicture();
        boolean marked = !sheet.all(PictureMarked.class, m -> m.fact().picture() == self.entry())
                .isEmpty();
        return marked && !same ? Missing.reliedOn() : List.of();
    }

    /** A picture is taken from where it is safe. */
    @Override
    public boolean possibleWhileStopped() {
        return true;
    }

    /** With the size that the file has, whatever was told. */
    @Override
    public Fact completedBy(ServerKnowledge server) {
        return new AttachmentAdded(fileName, mediaType, server.fileSize(sha256), sha256, shows, deviceTime, scaledFrom);
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(shows, Source.SEEN));
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                Told.noted(fileName, shows),
                deviceTime == null ? "" : "taken " + reader.time(deviceTime) + " by the clock of the device",
                scaledFrom == null ? "" : "made smaller, from " + scaledFrom);
    }
}
