package org.benchtrail.readin;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.readin.About;
import org.benchtrail.core.readin.DrivePages;
import org.benchtrail.core.readin.Kind;
import org.benchtrail.core.readin.ReadIn;
import org.benchtrail.core.readin.Received;
import org.benchtrail.core.readin.Redfish;
import org.benchtrail.core.readin.SeriesSummary;
import org.benchtrail.core.readin.UpsMib;
import org.benchtrail.ticket.attachment.NewFile;

/**
 * What a device said, as it came.
 *
 * @param content the bytes of a drive's page, or the text in UTF-8
 * @param name of the file it came in; empty if it was typed
 */
record RawReport(Kind kind, byte[] content, String name) {
    private static final int A_LINE = 16;
    /** Of a file that is no page, no more is shown as digits. */
    private static final int MOST_SHOWN = 4_096;

    /** @throws Invalid if it is empty, too large, or for bytes not hexadecimal */
    static RawReport typed(Kind kind, String text, String name) {
        if (kind.isBytes()) {
            return new RawReport(kind, Received.hex(text), name);
        }
        String plain = Received.plain(text);
        byte[] bytes = plain.getBytes(StandardCharsets.UTF_8);
        Received.requireSize(bytes.length);
        return new RawReport(kind, bytes, name);
    }

    /** A file, or the body of a request: bytes are taken as they are, unless they are digits written out. */
    static RawReport sent(Kind kind, byte[] content, String name) {
        Received.requireSize(content.length);
        if (!kind.isBytes()) {
            return new RawReport(kind, Received.text(content).getBytes(StandardCharsets.UTF_8), name);
        }
        return isHex(content)
                ? typed(kind, new String(content, StandardCharsets.US_ASCII), name)
                : new RawReport(kind, content, name);
    }

    private static boolean isHex(byte[] content) {
        return IntStream.range(0, content.length)
                .map(i -> content[i])
                .allMatch(c -> c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == ':' || HexFormat.isHexDigit(c));
    }

    /** As it is shown and sent again: a text, or pairs of digits, sixteen to a line. */
    String text() {
        if (!kind.isBytes()) {
            return new String(content, StandardCharsets.UTF_8);
        }
        int shown = Math.min(content.length, MOST_SHOWN);
        HexFormat pairs = HexFormat.ofDelimiter(" ");
        return IntStream.iterate(0, from -> from < shown, from -> from + A_LINE)
                .mapToObj(from -> pairs.formatHex(Arrays.copyOfRange(content, from, Math.min(shown, from + A_LINE))))
                .collect(Collectors.joining("\n"));
    }

    /** @throws Invalid with the offset, row or path of what is malformed */
    ReadIn read(About about) {
        return switch (kind) {
            case NVME_PAGE -> DrivePages.nvme(content, about);
            case ATA_PAGE -> DrivePages.ata(content, about);
            case ATA_ROWS -> DrivePages.ataRows(text(), about);
            case REDFISH -> Redfish.read(JsonTree.parse(text()), about);
            case UPS_MIB -> UpsMib.read(text(), about);
            case SERIES -> SeriesSummary.read(text(), about);
        };
    }

    /** To be kept beside the ticket. */
    NewFile file() {
        return new NewFile(
                name.isBlank() ? kind.id() + ending() : name,
                mediaType(),
                content,
                kind.words() + ", as it was read in");
    }

    private String ending() {
        return switch (kind) {
            case NVME_PAGE, ATA_PAGE -> ".bin";
            case REDFISH -> ".json";
            case SERIES -> ".csv";
            case ATA_ROWS, UPS_MIB -> ".txt";
        };
    }

    private String mediaType() {
        return switch (kind) {
            case NVME_PAGE, ATA_PAGE -> "application/octet-stream";
            case REDFISH -> "application/json";
            case SERIES -> "text/csv";
            case ATA_ROWS, UPS_MIB -> "text/plain";
        };
    }
}
