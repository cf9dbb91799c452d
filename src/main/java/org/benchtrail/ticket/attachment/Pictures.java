package org.benchtrail.ticket.attachment;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import net.coobird.thumbnailator.Thumbnails;
import net.coobird.thumbnailator.util.exif.ExifFilterUtils;
import net.coobird.thumbnailator.util.exif.Orientation;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * Pictures among the attached files, made small and turned the right way up to be shown. The kept bytes stay as they came. What
 * a picture would take in memory is known from its head before it is unpacked: too large a one is refused, and of a large one
 * only every so many-th point is read.
 */
final class Pictures {
    static final String MEDIA_TYPE = "image/jpeg";

    private static final long MOST_POINTS = 60_000_000;

    /** So many are unpacked at once, whoever asks. */
    private static final Semaphore ROOM = new Semaphore(2);

    private Pictures() {}

    /** @throws Invalid if it is a picture of more points than can be shown */
    static void requireShowable(byte[] content) {
        long points = points(content);
        if (points > MOST_POINTS) {
            throw new Invalid(
                    "file",
                    "The picture has " + points / 1_000_000
                            + " million points; at most 60 million can be shown. Make it smaller first.");
        }
    }

    /** What its head tells; 0 if it is no picture that can be read, but a file like any other. */
    private static long points(byte[] content) {
        try (ImageInputStream in = open(content)) {
            Optional<ImageReader> reader = reader(in);
            return reader.isEmpty()
                    ? 0
                    : (long) reader.get().getWidth(0) * reader.get().getHeight(0);
        } catch (IOException | RuntimeException e) {
            return 0; // a broken head makes readers throw anything
        }
    }

    /**
     * The picture with at most so many points on its longer side, as JPEG; empty if the file is no picture.
     *
     * @param longest points
     */
    static Optional<byte[]> small(byte[] content, int longest) {
        if (points(content) > MOST_POINTS) {
            return Optional.empty();
        }
        ROOM.acquireUninterruptibly();
        try (ImageInputStream in = open(content)) {
            Optional<ImageReader> reader = reader(in);
            return reader.isEmpty()
                    ? Optional.empty()
                    : Optional.of(small(reader.get(), CameraNotes.of(content).up(), longest));
        } catch (IOException | RuntimeException e) {
            return Optional.empty(); // broken bytes make readers throw anything
        } finally {
            ROOM.release();
        }
    }

    private static byte[] small(ImageReader reader, @Nullable Orientation up, int longest) throws IOException {
        try {
            int side = Math.max(reader.getWidth(0), reader.getHeight(0));
            ImageReadParam every = reader.getDefaultReadParam();
            int step = Math.max(1, side / (2 * longest));
            every.setSourceSubsampling(step, step, 0, 0);
            BufferedImage picture = reader.read(0, every);
            BufferedImage upright = up == null
                    ? picture
                    : ExifFilterUtils.getFilterForOrientation(up).apply(picture);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            double scale = Math.min(1, longest / (double) Math.max(upright.getWidth(), upright.getHeight()));
            Thumbnails.of(upright)
                    .scale(scale)
                    .imageType(BufferedImage.TYPE_INT_RGB)
                    .outputFormat("jpg")
                    .outputQuality(0.85)
                    .toOutputStream(out);
            return out.toByteArray();
        } finally {
            reader.dispose();
        }
    }

    private static ImageInputStream open(byte[] content) {
        return new MemoryCacheImageInputStream(new ByteArrayInputStream(content));
    }

    private static Optional<ImageReader> reader(ImageInputStream in) {
        Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
        if (!readers.hasNext()) {
            return Optional.empty();
        }
        ImageReader reader = readers.next();
        reader.setInput(in);
        return Optional.of(reader);
    }
}
