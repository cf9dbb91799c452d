package org.benchtrail.seal.timestamp;

import java.io.IOException;
import java.math.BigInteger;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import org.benchtrail.core.integrity.Hash;
import org.bouncycastle.asn1.cmp.PKIStatus;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampResponse;
import org.bouncycastle.tsp.TimeStampToken;
import org.bouncycastle.tsp.TimeStampTokenInfo;
import org.jspecify.annotations.Nullable;

/** Reads what an authority answers, and holds it against what was asked and who is trusted. */
public final class TimeStampAnswer {
    /** Many times as long as one that holds a chain of certificates. */
    public static final int LONGEST = 65_536;

    private final TimeStampToken token;

    private TimeStampAnswer(TimeStampToken token) {
        this.token = token;
    }

    /**
     * Reads an answer that grants what was asked.
     *
     * @param der its bytes as they came
     */
    public static TimeStampAnswer parse(byte[] der) throws TimeStampRefused {
        try {
            TimeStampResponse answer = new TimeStampResponse(der);
            if (answer.getStatus() != PKIStatus.GRANTED && answer.getStatus() != PKIStatus.GRANTED_WITH_MODS) {
                throw new TimeStampRefused("The authority refused, with status " + answer.getStatus() + ".");
            }
            if (answer.getTimeStampToken() == null) {
                throw new TimeStampRefused("The answer holds no time-stamp.");
            }
            return new TimeStampAnswer(answer.getTimeStampToken());
        } catch (IOException | TSPException | RuntimeException e) {
            throw new TimeStampRefused("The answer is no time-stamp.", e);
        }
    }

    /** Holds it against the number that was asked with. */
    public void requireNonce(BigInteger nonce) throws TimeStampRefused {
        if (!nonce.equals(token.getTimeStampInfo().getNonce())) {
            throw new TimeStampRefused("It answers another request: the nonce differs.");
        }
    }

    /**
     * What it says, if it is of that text and by somebody whose certificate is for time-stamps only.
     *
     * @param imprint SHA-256 of the text
     * @param roots who is trusted; null if that is not asked
     */
    public TimeStamp of(Hash imprint, @Nullable TimeStampRoots roots) throws TimeStampRefused {
        try {
            return said(imprint, roots);
        } catch (RuntimeException e) {
            // the library reads some parts only when they are asked for
            throw new TimeStampRefused("A part of it cannot be read.", e);
        }
    }

    private TimeStamp said(Hash imprint, @Nullable TimeStampRoots roots) throws TimeStampRefused {
        TimeStampTokenInfo said = token.getTimeStampInfo();
        if (!said.getMessageImprintAlgOID().equals(TimeStampRequest.SHA_256.getAlgorithm())) {
            throw new TimeStampRefused("It is of a hash of another kind.");
        }
        if (!Arrays.equals(said.getMessageImprintDigest(), imprint.bytes())) {
            throw new TimeStampRefused("It is of another head.");
        }
        X509CertificateHolder signer = signer();
        signed(signer);
        Instant at = said.getGenTime().toInstant();
        if (roots != null && !roots.reach(certificate(signer), certificates(), at)) {
            throw new TimeStampRefused("Its certificate does not lead to a root that is trusted.");
        }
        return new TimeStamp(at, certificate(signer).getSubjectX500Principal().getName());
    }

    @SuppressWarnings("unchecked") // the library's selector has no kind
    private X509CertificateHolder signer() throws TimeStampRefused {
        Collection<X509CertificateHolder> found = token.getCertificates().getMatches(token.getSID());
        return found.stream()
                .findFirst()
                .orElseThrow(() -> new TimeStampRefused("It lacks the certificate of whoever signed it."));
    }

    /** Its signature; and that the certificate was valid then, and is for time-stamps only and says so as critical. */
    private void signed(X509CertificateHolder signer) throws TimeStampRefused {
        try {
            token.validate(new JcaSimpleSignerInfoVerifierBuilder().build(signer));
        } catch (TSPException | OperatorCreationException | CertificateException e) {
            throw new TimeStampRefused(
                    "It is not signed by a certificate for time-stamps (" + e.getMessage() + ").", e);
        }
    }

    private List<X509Certificate> certificates() throws TimeStampRefused {
        List<X509Certificate> all = new ArrayList<>();
        for (X509CertificateHolder one : token.getCertificates().getMatches(null)) {
            all.add(certificate(one));
        }
        return all;
    }

    private static X509Certificate certificate(X509CertificateHolder holder) throws TimeStampRefused {
        try {
            return new JcaX509CertificateConverter().getCertificate(holder);
        } catch (CertificateException e) {
            throw new TimeStampRefused("A certificate in it cannot be read.", e);
        }
    }
}
