package org.benchtrail.ticket.attachment;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A file to be kept beside a ticket.
 *
 * @param shows what it shows
 * @param deviceTime when the original was last written, by the clock of the device; null if it told none
 * @param scaledFrom size of the original where a smaller copy was sent; null if it was not
 */
public record NewFile(
        String name,
        String mediaType,
        byte[] content,
        String shows,
        @Nullable Instant deviceTime,
        @Nullable String scaledFrom) {

    /** As it came, from a device that told no time. */
    public NewFile(String name, String mediaType, byte[] content, String shows) {
        this(name, mediaType, content, shows, null, null);
    }
}
