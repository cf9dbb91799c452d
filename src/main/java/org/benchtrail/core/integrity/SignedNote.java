package org.benchtrail.core.integrity;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/**
 * A text with signatures (C2SP signed-note).
 *
 * @param text ends in a newline
 * @param lines at least one
 */
public record SignedNote(String text, List<Line> lines) {
    /** The largest note that is read, in bytes. */
    public static final int LARGEST = 64 * 1024;

    private static final String MARK = "\u2014 ";
    private static final int ID_BYTES = 4;

    /** @throws IllegalArgumentException if the text does not end in a newline or has control characters, or nobody signed */
    public SignedNote {
        lines = List.copyOf(lines);
        if (!text.endsWith("\n") || text.chars().anyMatch(c -> c < ' ' && c != '\n') || lines.isEmpty()) {
            throw new IllegalArgumentException("not a signed note");
        }
    }

    /** One signature: the name of the key, and the id of the key with what was signed. */
    public static final class Line {
        private final String name;
        private final byte[] idAndSignature;

        /** @throws IllegalArgumentException if the name is none, or there is no signature after the id */
        public Line(String name, byte[] idAndSignature) {
            if (!VerifierKey.isName(name) || idAndSignature.length <= ID_BYTES) {
                throw new IllegalArgumentException("not a signature line");
            }
            this.name = name;
            this.idAndSignature = idAndSignature.clone();
        }

        /** @throws IllegalArgumentException if it is no signature line; the newline is not part of it */
        public static Line parse(String line) {
            String[] parts =
                    line.startsWith(MARK) ? line.substring(MARK.length()).split(" ", -1) : new String[0];
            if (parts.length != 2) {
                throw new IllegalArgumentException("not a signature line");
            }
            return new Line(parts[0], CanonicalBase64.read(parts[1]));
        }

        public String name() {
            return name;
        }

        /** Eight lower-case hexadecimal digits. */
        public String keyId() {
            return HexFormat.of().formatHex(idAndSignature, 0, ID_BYTES);
        }

        byte[] signature() {
            return Arrays.copyOfRange(idAndSignature, ID_BYTES, idAndSignature.length);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Line line && toString().equals(line.toString());
        }

        @Override
        public int hashCode() {
            return toString().hashCode();
        }

        @Override
        public String toString() {
            return MARK + name + " " + Base64.getEncoder().encodeToString(idAndSignature);
        }
    }

    /** @throws IllegalArgumentException if the bytes are no signed note, or too many */
    public static SignedNote parse(byte[] bytes) {
        if (bytes.length > LARGEST) {
            throw new IllegalArgumentException("a note of " + bytes.length + " bytes is too large");
        }
        String whole;
        try {
            whole = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException("a note is UTF-8", e);
        }
        int end = whole.lastIndexOf("\n\n");
        if (end < 0 || !whole.endsWith("\n")) {
            throw new IllegalArgumentException("a note has an empty line before its signatures, and ends in a newline");
        }
        List<Line> lines = new ArrayList<>();
        for (String line : whole.substring(end + 2, whole.length() - (end + 2 < whole.length() ? 1 : 0))
                .split("\n", -1)) {
            lines.add(Line.parse(line));
        }
        return new SignedNote(whole.substring(0, end + 1), lines);
    }

    public static SignedNote parse(String note) {
        return parse(note.getBytes(StandardCharsets.UTF_8));
    }

    /** The same text with further signatures; those that are there already are not added again. */
    public SignedNote with(Collection<Line> further) {
        return new SignedNote(
                text, Stream.concat(lines.stream(), further.stream()).distinct().toList());
    }

    /** The same text with those signatures only that are by one of the keys, whether they hold or not. */
    public List<Line> by(VerifierKey key) {
        return lines.stream().filter(key::isOf).toList();
    }

    /**
     * The keys whose signatures hold. Signatures by unknown keys, or of kinds that are not understood, are passed over.
     *
     * @throws IllegalArgumentException if a signature by one of the keys does not hold, or none of them signed
     */
    public List<VerifierKey> signers(Collection<VerifierKey> known) {
        List<VerifierKey> signers = new ArrayList<>();
        for (VerifierKey key : known) {
            List<Line> own = key.isUnderstood() ? by(key) : List.of();
            if (!own.stream().allMatch(line -> key.verifies(text, line))) {
                throw new IllegalArgumentException("the signature by " + key.name() + " does not hold");
            }
            if (!own.isEmpty()) {
                signers.add(key);
            }
        }
        if (signers.isEmpty()) {
            throw new IllegalArgumentException("no known key signed this note");
        }
        return signers;
    }

    public byte[] bytes() {
        return toString().getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public String toString() {
        StringBuilder note = new StringBuilder(text).append('\n');
        lines.forEach(line -> note.append(line).append('\n'));
        return note.toString();
    }
}
