package org.benchtrail.seal.timestamp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.Set;
import org.benchtrail.core.Published;
import org.benchtrail.core.integrity.Hash;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TimeStampRequestGenerator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is taken as a time-stamp of a head, and each thing that can be wrong with one. */
class TimeStampAnswerTest {
    private static final Hash TEXT = Hash.sha256("the text of a head".getBytes(StandardCharsets.US_ASCII));
    private static final BigInteger NONCE = BigInteger.valueOf(4_071_860_000L);

    @TempDir
    Path folder;

    private final TestAuthority authority = new TestAuthority();
    private TimeStampRoots roots;

    @BeforeEach
    void roots() throws IOException {
        roots = TimeStampRoots.read(authority.roots(folder, true));
    }

    private static byte[] asked() {
        return new TimeStampRequest(TEXT, NONCE).der();
    }

    private TimeStamp read(byte[] answer) throws TimeStampRefused {
        TimeStampAnswer read = TimeStampAnswer.parse(answer);
        read.requireNonce(NONCE);
        return read.of(TEXT, roots);
    }

    private void refused(String why, byte[] answer) {
        String said = assertThrows(TimeStampRefused.class, () -> read(answer)).sentence();
        assertTrue(said.contains(why), said);
    }

    @Test
    void theRequest_hasTheBytesThatAnotherToolMakes() {
        Published.check(
                "RFC 3161 section 2.4.1, by a general cryptographic tool",
                "30390201013031300d0609608648016503040201050004202d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a48810101ff",
                HexFormat.of().formatHex(new TimeStampRequest(Hash.sha256(new byte[] {'x'}), null).der()));
    }

    @Test
    void aSoundAnswer_saysWhenAndWho() throws TimeStampRefused {
        assertEquals(new TimeStamp(TestAuthority.NOW, "CN=Test Authority"), read(authority.answer(asked())));
    }

    @Test
    void anAnswerToSomethingElse_isRefused() throws Exception {
        refused("of another head", authority.answer(new TimeStampRequest(Hash.EMPTY_TREE, NONCE).der()));
        refused("the nonce differs", authority.answer(new TimeStampRequest(TEXT, BigInteger.TEN).der()));
        refused("the nonce differs", authority.answer(new TimeStampRequest(TEXT, null).der()));
        TimeStampRequestGenerator other = new TimeStampRequestGenerator();
        other.setCertReq(true);
        // the same 32 bytes under another name, which a comparison of the bytes alone does not tell
        refused(
                "another kind",
                authority.answer(other.generate(new AlgorithmIdentifier(TSPAlgorithms.SM3), TEXT.bytes(), NONCE)
                        .getEncoded()));
    }

    @Test
    void anAuthorityThatDoesNotGrantIt_isRefused() throws TimeStampRefused {
        refused("with status 2", authority.answer(asked(), Set.of(TSPAlgorithms.SHA512)));
        byte[] beside = authority.answer(asked());
        // the status stands first: 30 82 .. .. 30 .. 02 01 <status>
        int status = HexFormat.of().formatHex(beside).indexOf("020100") / 2 + 2;
        beside[status] = 2;
        refused("with status 2", beside);
        beside[status] = 1;
        assertEquals("CN=Test Authority", read(beside).by(), "granted with changes");
    }

    @Test
    void aCertificateThatIsNotForTimeStampsAlone_isRefused() throws TimeStampRefused {
        authority.usages(true, KeyPurposeId.id_kp_timeStamping);
        assertEquals("CN=Test Authority", read(authority.answer(asked())).by(), "the right use, made the same way");
        refused(
                "must have an ExtendedKeyUsage extension.",
                authority.usages(true).answer(asked()));
        refused(
                "marked as critical",
                authority.usages(false, KeyPurposeId.id_kp_timeStamping).answer(asked()));
        refused(
                "not solely time stamping",
                authority.usages(true, KeyPurposeId.id_kp_emailProtection).answer(asked()));
        refused(
                "not solely time stamping",
                authority
                        .usages(true, KeyPurposeId.id_kp_timeStamping, KeyPurposeId.id_kp_emailProtection)
                        .answer(asked()));
        refused("not valid when time stamp created", authority.expired().answer(asked()));
    }

    @Test
    void aChainToAnotherRoot_isRefused() throws Exception {
        byte[] answer = authority.answer(asked());
        roots = TimeStampRoots.read(authority.roots(folder, false));
        refused("does not lead to a root", answer);
        roots = null;
        assertEquals("CN=Test Authority", read(answer).by(), "whoever names no roots does not ask");
    }

    @Test
    void anAnswerWithoutTheCertificate_isRefused() {
        refused("lacks the certificate", authority.withoutCertificate().answer(asked()));
    }

    @Test
    void everyAlteredByte_isRefusedOrChangesNothing() throws TimeStampRefused {
        byte[] answer = authority.answer(asked());
        TimeStamp sound = read(answer);
        int refused = 0;
        for (int i = 0; i < answer.length; i++) {
            byte[] altered = answer.clone();
            altered[i] ^= 1;
            try {
                assertEquals(sound, read(altered), "byte " + i);
            } catch (TimeStampRefused expected) {
                refused++;
            }
        }
        assertTrue(refused > answer.length * 9 / 10, refused + " of " + answer.length);
        refused("no time-stamp", new byte[0]);
        refused("no time-stamp", "garbage".getBytes(StandardCharsets.US_ASCII));
        byte[] cut = java.util.Arrays.copyOf(answer, answer.length - 1);
        refused("no time-stamp", cut);
    }

    @Test
    void aFileWithoutRoots_saysSo() throws IOException {
        Path empty = Files.writeString(folder.resolve("empty.pem"), "");
        assertTrue(assertThrows(IllegalArgumentException.class, () -> TimeStampRoots.read(empty))
                .getMessage()
                .contains("holds no certificate"));
        Path garbage = Files.writeString(folder.resolve("garbage.pem"), "garbage");
        assertThrows(IllegalArgumentException.class, () -> TimeStampRoots.read(garbage));
    }
}
