package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.text.FieldChecks;

/** A file kept beside the ticket; the bytes are stored once and named by their SHA-256. */
public record AttachmentAdded(String fileName, String mediaType, long bytes, String sha256, String shows)
        implements EvidenceFact {
    public AttachmentAdded {
        FieldChecks t = new FieldChecks();
        fileName = t.required("fileName", fileName, FieldChecks.LINE, "The file needs a name.");
        mediaType = t.required("mediaType", mediaType, FieldChecks.LINE, "The file needs a media type.");
        t.require(bytes > 0, "file", "The file is empty: choose another.");
        // beyond, a number of the canonical form would not be exact
        t.require(bytes <= 1L << 53, "bytes", "No file is that large.");
        t.require(sha256 != null && sha256.matches("[0-9a-f]{64}"), "sha256", "A SHA-256 is 64 hexadecimal digits.");
        shows = t.required("shows", shows, FieldChecks.LINE, "Say what the file shows.");
        t.done();
    }

    @Override
    public boolean countsAsEvidence() {
        return true;
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    /** A picture is taken from where it is safe. */
    @Override
    public boolean possibleWhileStopped() {
        return true;
    }

    /** With the size that the file has, whatever was told. */
    @Override
    public Fact completedBy(ServerKnowledge server) {
        return new AttachmentAdded(fileName, mediaType, server.fileSize(sha256), sha256, shows);
    }
}
