package org.benchtrail.core.integrity;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;

/** A key by which signatures of notes are verified (C2SP signed-note), such as {@code log.shop.example/trail+c745b9b6+Ad...}. */
public final class VerifierKey {
    /** Signature of the text by Ed25519. */
    public static final int LOG = 1;

    /** Cosignature with a time by Ed25519. */
    public static final int WITNESS = 4;

    private static final byte[] X509_PREFIX = HexFormat.of().parseHex("302a300506032b6570032100");
    private static final int ED25519_BYTES = 32;

    private final String name;
    private final int type;
    private final byte[] publicKey;
    private final String id;

    /**
     * A key.
     *
     * @param type 1 to 255; other types than Ed25519's are known by name and id and verify nothing
     * @throws IllegalArgumentException if the name is none, or an Ed25519 key has not 32 bytes
     */
    public VerifierKey(String name, int type, byte[] publicKey) {
        if (!isName(name)) {
            throw new IllegalArgumentException("no key is named '" + name + "'");
        }
        boolean ed25519 = type == LOG || type == WITNESS;
        if (type < 1 || type > 255 || (ed25519 && publicKey.length != ED25519_BYTES)) {
            throw new IllegalArgumentException("not a key of type " + type);
        }
        this.name = name;
        this.type = type;
        this.publicKey = publicKey.clone();
        byte[] hash = Hash.sha256(name.getBytes(StandardCharsets.UTF_8), new byte[] {'\n', (byte) type}, publicKey)
                .bytes();
        id = HexFormat.of().formatHex(hash, 0, 4);
    }

    static boolean isName(String name) {
        return !name.isEmpty()
                && name.codePoints().noneMatch(c -> c == '+' || Character.isWhitespace(c) || Character.isSpaceChar(c));
    }

    /** @throws IllegalArgumentException if the text is no verifier key, or its id is not that of its key */
    public static VerifierKey parse(String text) {
        String[] parts = text.split("\\+", 3);
        if (parts.length != 3) {
            throw new IllegalArgumentException("a verifier key is name+id+key");
        }
        byte[] key = CanonicalBase64.read(parts[2]);
        if (key.length < 2) {
            throw new IllegalArgumentException("a verifier key without key");
        }
        VerifierKey read = new VerifierKey(parts[0], key[0] & 0xff, Arrays.copyOfRange(key, 1, key.length));
        if (!read.id.equals(parts[1])) {
            throw new IllegalArgumentException("the key " + parts[0] + " has the id " + read.id + ", not " + parts[1]);
        }
        return read;
    }

    public String name() {
        return name;
    }

    public int type() {
        return type;
    }

    /** Eight lower-case hexadecimal digits. */
    public String id() {
        return id;
    }

    /** Whether signatures by this key can be verified here. */
    public boolean isUnderstood() {
        return type == LOG || type == WITNESS;
    }

    /** Whether the signature claims to be by this key. */
    public boolean isOf(SignedNote.Line line) {
        return line.name().equals(name) && line.keyId().equals(id);
    }

    /** Whether the signature, which claims to be by this key, holds over the text of the note. */
    public boolean verifies(String text, SignedNote.Line line) {
        byte[] signature = line.signature();
        if (type == LOG) {
            return holds(text.getBytes(StandardCharsets.UTF_8), signature);
        }
        return type == WITNESS
                && signature.length == Cosignature.BYTES
                && holds(
                        Cosignature.message(Cosignature.time(signature), text),
                        Arrays.copyOfRange(
                                signature, Cosignature.BYTES - SigningKey.SIGNATURE_BYTES, Cosignature.BYTES));
    }

    private boolean holds(byte[] message, byte[] signature) {
        if (signature.length != SigningKey.SIGNATURE_BYTES) {
            return false;
        }
        try {
            byte[] encoded = Arrays.copyOf(X509_PREFIX, X509_PREFIX.length + ED25519_BYTES);
            System.arraycopy(publicKey, 0, encoded, X509_PREFIX.length, ED25519_BYTES);
            Signature check = Signature.getInstance("Ed25519");
            check.initVerify(KeyFactory.getInstance("Ed25519").generatePublic(new X509EncodedKeySpec(encoded)));
            check.update(message);
            return check.verify(signature);
        } catch (GeneralSecurityException notEvenASignature) {
            return false;
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof VerifierKey key && toString().equals(key.toString());
    }

    @Override
    public int hashCode() {
        return toString().hashCode();
    }

    /** The text that is given to whoever verifies. */
    @Override
    public String toString() {
        byte[] key = new byte[1 + publicKey.length];
        key[0] = (byte) type;
        System.arraycopy(publicKey, 0, key, 1, publicKey.length);
        return name + "+" + id + "+" + Base64.getEncoder().encodeToString(key);
    }
}
