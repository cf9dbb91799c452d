package org.benchtrail.readin;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.readin.About;
import org.benchtrail.core.readin.Kind;
import org.benchtrail.core.readin.Received;
import org.benchtrail.platform.form.PostedForm;

/**
 * What the page's form says. Its fields: {@code kind}, {@code text} with {@code fileName} of the file that it came in, or {@code file};
 * {@code device}, {@code quantity}, {@code unit}; {@code ticket} with the {@code version} that was shown; {@code seen} names what was
 * shown, so that nothing else is recorded; {@code take} the keys of the ticked lines.
 */
record ReadInForm(PostedForm sent) {
    String text(String field) {
        return sent.text(field);
    }

    Set<String> taken() {
        return Set.copyOf(sent.all("take"));
    }

    /** @throws Invalid if none is chosen */
    Kind chosen() {
        return Kind.find(text("kind")).orElseThrow(() -> new Invalid("kind", "Choose what it is that you read in."));
    }

    About about() {
        return new About(text("device"), text("quantity"), text("unit"));
    }

    /** The file if there is one, else the text. */
    RawReport report() {
        Kind chosen = chosen();
        return sent.file("file")
                .map(file -> {
                    Received.requireSize(file.size());
                    return RawReport.sent(chosen, file.bytes(), file.name().strip());
                })
                .orElseGet(() -> RawReport.typed(chosen, sent.asSent("text"), text("fileName")));
    }

    /** @throws Invalid if it is no number of a ticket */
    TicketNumber ticket() {
        try {
            return TicketNumber.parse(text("ticket"));
        } catch (Invalid e) {
            throw new Invalid("ticket", e.problems().get(0).sentence());
        }
    }

    /** The same for the same kind, content, device, quantity, unit and ticket. */
    String print(RawReport report) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String part :
                    List.of(report.kind().id(), text("device"), text("quantity"), text("unit"), text("ticket"))) {
                digest.update((part + "\n").getBytes(StandardCharsets.UTF_8));
            }
            return HexFormat.of().formatHex(digest.digest(report.content()));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
