package org.benchtrail.seal.timestamp;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import org.benchtrail.core.integrity.Hash;
import org.bouncycastle.asn1.ASN1Boolean;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1Integer;
import org.bouncycastle.asn1.DERNull;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.tsp.MessageImprint;
import org.bouncycastle.asn1.tsp.TimeStampReq;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.jspecify.annotations.Nullable;

/**
 * What an authority is asked: to sign an imprint together with the time.
 *
 * @param imprint SHA-256 of the text
 * @param nonce a number that nobody can know before, so that no earlier answer fits; null for none
 */
public record TimeStampRequest(Hash imprint, @Nullable BigInteger nonce) {
    static final AlgorithmIdentifier SHA_256 =
            new AlgorithmIdentifier(NISTObjectIdentifiers.id_sha256, DERNull.INSTANCE);

    /** What an authority signs in place of a head's text. */
    public static Hash imprint(String text) {
        return Hash.sha256(text.getBytes(StandardCharsets.UTF_8));
    }

    /** In the form in which it is posted, with the wish for the certificate in the answer. */
    public byte[] der() {
        try {
            return new TimeStampReq(
                            new MessageImprint(SHA_256, imprint.bytes()),
                            null,
                            nonce == null ? null : new ASN1Integer(nonce),
                            ASN1Boolean.TRUE,
                            null)
                    .getEncoded(ASN1Encoding.DER);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
