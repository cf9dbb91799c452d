package org.benchtrail.seal.timestamp;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.cert.CertPathBuilder;
import java.security.cert.CertStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.CollectionCertStoreParameters;
import java.security.cert.PKIXBuilderParameters;
import java.security.cert.TrustAnchor;
import java.security.cert.X509CertSelector;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Collection;
import java.util.HashSet;
import java.util.Set;

/** The certificates that whoever asks trusts; a chain has to end at one of them. */
public final class TimeStampRoots {
    private final Set<TrustAnchor> anchors;

    private TimeStampRoots(Set<TrustAnchor> anchors) {
        this.anchors = anchors;
    }

    /** @throws IllegalArgumentException with a sentence, if the file holds no certificates in PEM */
    public static TimeStampRoots read(Path pem) throws IOException {
        try (InputStream file = Files.newInputStream(pem)) {
            Set<TrustAnchor> anchors = new HashSet<>();
            for (Certificate one : CertificateFactory.getInstance("X.509").generateCertificates(file)) {
                anchors.add(new TrustAnchor((X509Certificate) one, null));
            }
            if (anchors.isEmpty()) {
                throw new IllegalArgumentException(pem + " holds no certificate: it takes those of the roots, in PEM.");
            }
            return new TimeStampRoots(anchors);
        } catch (CertificateException e) {
            throw new IllegalArgumentException(pem + " is no file of certificates in PEM.", e);
        }
    }

    /** Whether a chain of these leads from the signer to a root, all of them valid at that time. */
    @SuppressWarnings("JavaUtilDate") // the chain's check takes no other kind of time
    boolean reach(X509Certificate signer, Collection<X509Certificate> between, Instant at) {
        try {
            X509CertSelector target = new X509CertSelector();
            target.setCertificate(signer);
            PKIXBuilderParameters asked = new PKIXBuilderParameters(anchors, target);
            asked.addCertStore(CertStore.getInstance("Collection", new CollectionCertStoreParameters(between)));
            asked.setRevocationEnabled(false);
            asked.setDate(java.util.Date.from(at));
            CertPathBuilder.getInstance("PKIX").build(asked);
            return true;
        } catch (GeneralSecurityException e) {
            return false;
        }
    }
}
