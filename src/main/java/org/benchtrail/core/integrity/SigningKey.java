package org.benchtrail.core.integrity;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.PrivateKey;
import java.security.Signature;
import java.util.Arrays;
import java.util.HexFormat;

/** An Ed25519 key (RFC 8032) with the name under which it signs notes, as a log or as a witness. */
public final class SigningKey {
    static final int SIGNATURE_BYTES = 64;

    private static final int PUBLIC_BYTES = 32;

    private final PrivateKey secret;
    private final VerifierKey verifier;

    /**
     * A key with its name.
     *
     * @param type {@link VerifierKey#LOG} or {@link VerifierKey#WITNESS}
     * @throws IllegalArgumentException if the two keys are no Ed25519 keys, or do not belong together
     */
    public SigningKey(String name, int type, KeyPair pair) {
        byte[] encoded = pair.getPublic().getEncoded();
        verifier =
                new VerifierKey(name, type, Arrays.copyOfRange(encoded, encoded.length - PUBLIC_BYTES, encoded.length));
        secret = pair.getPrivate();
        String probe = "do the two belong together?\n";
        SignedNote.Line signed = type == VerifierKey.LOG ? sign(probe) : cosign(probe, 1);
        if (!verifier.verifies(probe, signed)) {
            throw new IllegalArgumentException("private and public key do not belong together");
        }
    }

    public VerifierKey verifier() {
        return verifier;
    }

    /** Signs the text of a note as a log does. */
    public SignedNote.Line sign(String text) {
        return line(signed(text.getBytes(StandardCharsets.UTF_8)));
    }

    /**
     * Signs a checkpoint as a witness does.
     *
     * @param time seconds since 1970-01-01T00:00:00Z
     */
    public SignedNote.Line cosign(String text, long time) {
        return line(ByteBuffer.allocate(Cosignature.BYTES)
                .putLong(time)
                .put(signed(Cosignature.message(time, text)))
                .array());
    }

    private SignedNote.Line line(byte[] signature) {
        ByteBuffer whole = ByteBuffer.allocate(4 + signature.length);
        return new SignedNote.Line(
                verifier.name(),
                whole.put(HexFormat.of().parseHex(verifier.id())).put(signature).array());
    }

    private byte[] signed(byte[] message) {
        try {
            Signature signature = Signature.getInstance("Ed25519");
            signature.initSign(secret);
            signature.update(message);
            return signature.sign();
        } catch (GeneralSecurityException e) {
            throw new IllegalArgumentException("not a key of Ed25519", e);
        }
    }
}
