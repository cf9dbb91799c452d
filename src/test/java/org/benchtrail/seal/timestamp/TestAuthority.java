package org.benchtrail.seal.timestamp;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.MessageDigest;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.Date;
import java.util.List;
import java.util.Set;
import javax.security.auth.x500.X500Principal;
import org.bouncycastle.asn1.ASN1GeneralizedTime;
import org.bouncycastle.asn1.ASN1Integer;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cmp.PKIStatus;
import org.bouncycastle.asn1.cmp.PKIStatusInfo;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.tsp.MessageImprint;
import org.bouncycastle.asn1.tsp.TSTInfo;
import org.bouncycastle.asn1.tsp.TimeStampResp;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.CMSSignedDataGenerator;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampResponseGenerator;
import org.bouncycastle.tsp.TimeStampTokenGenerator;

/** An authority with a root of its own, that does one thing wrong where a test asks for it. */
public final class TestAuthority {
    public static final Instant NOW = Instant.parse("2026-01-02T03:04:05Z");

    private static final AlgorithmIdentifier SHA_256 = new AlgorithmIdentifier(TSPAlgorithms.SHA256);
    private static final List<KeyPurposeId> STAMPS = List.of(KeyPurposeId.id_kp_timeStamping);

    private final KeyPair rootKey = key();
    private final X509Certificate root;
    private final KeyPair signerKey = key();
    private X509Certificate signer;
    private boolean withCertificates = true;
    private boolean byHand;
    private Instant time = NOW;

    public TestAuthority() {
        root = certificate("CN=Test Root", rootKey, "CN=Test Root", rootKey, null, false, far(0), far(9999));
        signer = signer(STAMPS, true, far(0), far(9999));
    }

    private static Instant far(int days) {
        return Instant.parse("2020-01-01T00:00:00Z").plus(Duration.ofDays(days));
    }

    private static KeyPair key() {
        try {
            KeyPairGenerator made = KeyPairGenerator.getInstance("EC");
            made.initialize(256);
            return made.generateKeyPair();
        } catch (java.security.GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private X509Certificate signer(List<KeyPurposeId> usages, boolean critical, Instant from, Instant to) {
        return certificate("CN=Test Authority", signerKey, "CN=Test Root", rootKey, usages, critical, from, to);
    }

    @SuppressWarnings("JavaUtilDate") // the library takes no other kind of time
    private static X509Certificate certificate(
            String subject,
            KeyPair key,
            String issuer,
            KeyPair by,
            List<KeyPurposeId> usages,
            boolean critical,
            Instant from,
            Instant to) {
        try {
            JcaX509v3CertificateBuilder made = new JcaX509v3CertificateBuilder(
                    new X500Principal(issuer),
                    BigInteger.valueOf(subject.hashCode()).abs(),
                    Date.from(from),
                    Date.from(to),
                    new X500Principal(subject),
                    key.getPublic());
            if (usages == null) {
                made.addExtension(Extension.basicConstraints, true, new BasicConstraints(true));
            } else if (!usages.isEmpty()) {
                made.addExtension(
                        Extension.extendedKeyUsage,
                        critical,
                        new ExtendedKeyUsage(usages.toArray(new KeyPurposeId[0])));
            }
            return new JcaX509CertificateConverter()
                    .getCertificate(made.build(new JcaContentSignerBuilder("SHA256withECDSA").build(by.getPrivate())));
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    /** Signs with a certificate for these uses; the library's own maker of time-stamps would refuse it. */
    public TestAuthority usages(boolean critical, KeyPurposeId... usages) {
        byHand = true;
        signer = signer(List.of(usages), critical, far(0), far(9999));
        return this;
    }

    /** Its certificate ended a day before the time that it says. */
    public TestAuthority expired() {
        signer = signer(STAMPS, true, far(0), NOW.minus(Duration.ofDays(1)));
        return this;
    }

    public TestAuthority withoutCertificate() {
        withCertificates = false;
        return this;
    }

    public TestAuthority at(Instant said) {
        time = said;
        return this;
    }

    /** The file of its root, or of another of the same name, which signed nothing. */
    public Path roots(Path folder, boolean own) throws IOException {
        X509Certificate one = own ? root : new TestAuthority().root;
        try {
            return Files.writeString(
                    folder.resolve(own ? "roots.pem" : "others.pem"),
                    "-----BEGIN CERTIFICATE-----\n"
                            + Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII))
                                    .encodeToString(one.getEncoded())
                            + "\n-----END CERTIFICATE-----\n",
                    StandardCharsets.US_ASCII);
        } catch (java.security.cert.CertificateEncodingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Answers, as an authority does that takes these kinds of hash. */
    @SuppressWarnings("JavaUtilDate")
    public byte[] answer(byte[] request, Set<ASN1ObjectIdentifier> taken) {
        try {
            if (byHand) {
                return byHand(new TimeStampRequest(request));
            }
            TimeStampTokenGenerator tokens = new TimeStampTokenGenerator(
                    new JcaSimpleSignerInfoGeneratorBuilder().build("SHA256withECDSA", signerKey.getPrivate(), signer),
                    new JcaDigestCalculatorProviderBuilder().build().get(SHA_256),
                    new ASN1ObjectIdentifier("1.2.3.4"));
            if (withCertificates) {
                tokens.addCertificates(new JcaCertStore(List.of(signer)));
            }
            return new TimeStampResponseGenerator(tokens, taken)
                    .generate(new TimeStampRequest(request), BigInteger.ONE, Date.from(time))
                    .getEncoded();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    @SuppressWarnings("JavaUtilDate")
    private byte[] byHand(TimeStampRequest request) throws Exception {
        TSTInfo info = new TSTInfo(
                new ASN1ObjectIdentifier("1.2.3.4"),
                new MessageImprint(SHA_256, request.getMessageImprintDigest()),
                new ASN1Integer(1),
                new ASN1GeneralizedTime(Date.from(time)),
                null,
                null,
                new ASN1Integer(request.getNonce()),
                null,
                null);
        ESSCertIDv2 named = new ESSCertIDv2(MessageDigest.getInstance("SHA-256").digest(signer.getEncoded()));
        CMSSignedDataGenerator signed = new CMSSignedDataGenerator();
        signed.addSignerInfoGenerator(new JcaSimpleSignerInfoGeneratorBuilder()
                .setSignedAttributeGenerator(new AttributeTable(new Attribute(
                        PKCSObjectIdentifiers.id_aa_signingCertificateV2, new DERSet(new SigningCertificateV2(named)))))
                .build("SHA256withECDSA", signerKey.getPrivate(), signer));
        signed.addCertificates(new JcaCertStore(List.of(signer)));
        CMSSignedData token = signed.generate(
                new CMSProcessableByteArray(PKCSObjectIdentifiers.id_ct_TSTInfo, info.getEncoded()), true);
        return new TimeStampResp(new PKIStatusInfo(PKIStatus.granted), token.toASN1Structure()).getEncoded();
    }

    public byte[] answer(byte[] request) {
        return answer(request, TSPAlgorithms.ALLOWED);
    }
}
