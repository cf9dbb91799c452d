package org.benchtrail.ticket.attachment;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * A file to be kept beside a ticket.
 *
 * @param shows what it shows
 * @param deviceTime when the original was made, by the clock of the device; null if it told none
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

    /**
     * With the time that the camera noted, if it did: when the picture was taken, and not when its file was written.
     *
     * @param original the beginning of the original, where a smaller copy without its notes was sent; null if it was not
     * @param zone in which the camera's clock is read where it noted none
     */
    public NewFile noted(byte @Nullable [] original, ZoneId zone) {
        Instant time = CameraNotes.of(original == null ? content : original)
                .taken(zone)
                .orElse(deviceTime);
        return new NewFile(name, mediaType, content, shows, time, scaledFrom);
    }
}
