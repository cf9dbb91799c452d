package org.benchtrail.ticket.attachment;

import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.imaging.jpeg.JpegProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifReader;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import net.coobird.thumbnailator.util.exif.Orientation;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.jspecify.annotations.Nullable;

/** What a camera notes in its pictures: when they were taken, and which way up it was held. Nobody has checked it. */
public final class CameraNotes {
    /** The segments with the notes stand at the beginning of a file; with so many bytes of it they are complete. */
    public static final int HEAD = 256 * 1024;

    /** As Exif writes it. */
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT).withResolverStyle(ResolverStyle.STRICT);

    private final Metadata notes;

    private CameraNotes(Metadata notes) {
        this.notes = notes;
    }

    /**
     * Of a picture, or of its first {@link #HEAD} bytes; none of a file of another kind, or whose notes cannot be read.
     *
     * @param jpeg bytes of any file
     */
    static CameraNotes of(byte[] jpeg) {
        try {
            return new CameraNotes(
                    JpegMetadataReader.readMetadata(new ByteArrayInputStream(jpeg), List.of(new ExifReader())));
        } catch (JpegProcessingException | IOException | RuntimeException e) {
            return new CameraNotes(new Metadata()); // broken bytes make readers throw anything
        }
    }

    /**
     * When the picture was taken.
     *
     * @param zone in which the camera's clock is read where it noted none
     */
    Optional<Instant> taken(ZoneId zone) {
        return notes.getDirectoriesOfType(ExifSubIFDDirectory.class).stream()
                .flatMap(directory -> taken(directory, zone).stream())
                .filter(AttachmentAdded::isDeviceTime)
                .findFirst();
    }

    /** A clock that was never set notes no time at all, or one that is none. */
    private static Optional<Instant> taken(ExifSubIFDDirectory directory, ZoneId zone) {
        String time = directory.getString(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL);
        String offset = directory.getString(ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL);
        try {
            return time == null
                    ? Optional.empty()
                    : Optional.of(LocalDateTime.parse(time.strip(), TIME)
                            .atZone(offset == null || offset.isBlank() ? zone : ZoneOffset.of(offset.strip()))
                            .toInstant());
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Which way up the camera was held; null if it did not note that. */
    @Nullable
    Orientation up() {
        Directory first = notes.getFirstDirectoryOfType(ExifIFD0Directory.class);
        try {
            return first == null || !first.containsTag(ExifIFD0Directory.TAG_ORIENTATION)
                    ? null
                    : Orientation.typeOf(first.getInt(ExifIFD0Directory.TAG_ORIENTATION));
        } catch (MetadataException | RuntimeException e) {
            return null;
        }
    }
}
