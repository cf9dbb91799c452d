package org.benchtrail.platform.form;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import org.jboss.resteasy.reactive.server.multipart.FileItem;
import org.jboss.resteasy.reactive.server.multipart.FormValue;

/**
 * A file that came with a form.
 *
 * @param name as the sender's machine calls it; empty if it was not told
 */
public record PostedFile(String name, FileItem content) {
    static PostedFile of(FormValue sent) {
        return new PostedFile(Objects.requireNonNullElse(sent.getFileName(), ""), sent.getFileItem());
    }

    /** In bytes; a field in which no file was chosen sends none. */
    public long size() {
        try {
            return content.getFileSize();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public byte[] bytes() {
        try (InputStream in = content.getInputStream()) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
