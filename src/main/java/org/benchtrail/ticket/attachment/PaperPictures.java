package org.benchtrail.ticket.attachment;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.benchtrail.platform.chart.SvgMarks;
import org.benchtrail.ticket.identify.MarkedPicture;
import org.jspecify.annotations.Nullable;

/** Pictures for a file to keep, which holds them itself. */
@ApplicationScoped
public class PaperPictures {
    /** Points on the longer side. */
    private static final int POINTS = 800;

    /** Millimetres on the longer side. */
    private static final int LONGEST = 80;

    private final Attachments attachments;

    PaperPictures(Attachments attachments) {
        this.attachments = attachments;
    }

    /** Null where the file is none that can be shown, or is not the one that was attached. */
    @Transactional
    public @Nullable MarkedPicture onPaper(MarkedPicture picture) {
        return Optional.ofNullable(attachments.findById(picture.sha256()))
                .filter(kept -> Attachments.sha256(kept.content).equals(picture.sha256()))
                .flatMap(kept -> Pictures.small(kept.content, POINTS))
                .map(small -> picture.onPaper(
                        "data:" + Pictures.MEDIA_TYPE + ";base64,"
                                + Base64.getEncoder().encodeToString(small),
                        size(small)))
                .orElse(null);
    }

    private static SvgMarks.Size size(byte[] small) {
        try {
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(small));
            double scale = (double) LONGEST / Math.max(image.getWidth(), image.getHeight());
            return new SvgMarks.Size((int) Math.max(1, Math.round(image.getWidth() * scale)), (int)
                    Math.max(1, Math.round(image.getHeight() * scale)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
