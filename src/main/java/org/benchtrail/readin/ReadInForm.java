package org.benchtrail.readin;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.readin.About;
import org.benchtrail.core.readin.Kind;
import org.benchtrail.core.readin.Received;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** The fields of the page's form, as they were sent. */
public class ReadInForm {
    @RestForm
    @Nullable
    String kind;

    @RestForm
    @Nullable
    String text;

    @RestForm
    @Nullable
    String device;

    @RestForm
    @Nullable
    String quantity;

    @RestForm
    @Nullable
    String unit;

    @RestForm
    @Nullable
    String ticket;

    /** Name of the file that the text came in. */
    @RestForm
    @Nullable
    String fileName;

    /** Number of the ticket's last entry when it was shown. */
    @RestForm
    @Nullable
    String version;

    /** Names what was shown, so that nothing else is recorded. */
    @RestForm
    @Nullable
    String seen;

    /** Keys of the lines that are ticked. */
    @RestForm
    @Nullable
    List<String> take;

    @RestForm
    @Nullable
    FileUpload file;

    static String or(@Nullable String given) {
        return Objects.requireNonNullElse(given, "").strip();
    }

    /** @throws Invalid if none is chosen */
    Kind chosen() {
        return Kind.find(or(kind)).orElseThrow(() -> new Invalid("kind", "Choose what it is that you read in."));
    }

    About about() {
        return new About(or(device), or(quantity), or(unit));
    }

    /** The file if there is one, else the text. */
    Source source() {
        Kind chosen = chosen();
        FileUpload sent = file;
        if (sent == null || sent.size() == 0) {
            return Source.typed(chosen, Objects.requireNonNullElse(text, ""), or(fileName));
        }
        Received.requireSize(sent.size());
        try {
            return Source.sent(chosen, Files.readAllBytes(sent.uploadedFile()), or(sent.fileName()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    int shownVersion() {
        return or(version).matches("\\d{1,9}") ? Integer.parseInt(or(version)) : 0;
    }

    /** The same for the same kind, content, device, quantity, unit and ticket. */
    String print(Source source) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String part : List.of(source.kind().id(), or(device), or(quantity), or(unit), or(ticket))) {
                digest.update((part + "\n").getBytes(StandardCharsets.UTF_8));
            }
            return HexFormat.of().formatHex(digest.digest(source.content()));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
