package org.benchtrail.core.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.Signature;
import java.security.SignatureException;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signed notes, checkpoints and cosignatures: published ones, the specification's, and every bit of one turned. */
@BesideOthers
class SignedNoteTest {
    private static final String NOTES = "C2SP signed-note";
    private static final VerifierKey SUM =
            VerifierKey.parse("sum.golang.org+033de0ae+Ac4zctda0e5eza+HJyk9SxEdh+s3Ux18htTTAD8OuAn8");

    private static final SigningKey LOG = new SigningKey("log.shop.example/trail", VerifierKey.LOG, Keys.TEST_1);
    private static final SigningKey NEXT = new SigningKey("log.shop.example/trail", VerifierKey.LOG, Keys.TEST_3);
    private static final SigningKey WITNESS = new SigningKey("witness.example/w1", VerifierKey.WITNESS, Keys.TEST_2);

    private static final String TEXT = "log.shop.example/trail\n5\nwffwsCf3bFpyMniiwtq1eBDj5NUhuviGUJNbvkmOs48=\n";
    private static final String LOG_LINE =
            "— log.shop.example/trail x0W5tmXDO3utWkzhKT+jQlNafHk7KdLh+Bzof0biHLnfelgBkNi3JhAZGaJcT3tSa0Ka93A3U4pLOh+HvfwyAzTtrwo=";
    private static final String WITNESS_LINE =
            "— witness.example/w1 BNLYMwAAAABpVbkA6WAdIPnL+fFFNXkNQpTqP6o7kj95nuQoy8fndLZ3rivRmpPCnHT+7IZKru7J/L059XckHV6tQX3Dq0rrtdUuDw==";
    private static final SignedNote NOTE = SignedNote.parse(TEXT + "\n" + LOG_LINE + "\n" + WITNESS_LINE + "\n");

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** The signer of the runtime, by the first three tests of the standard; no bit of a signature can be another. */
    @Test
    void rfc8032_tests1To3() throws GeneralSecurityException {
        signs(
                Keys.TEST_1,
                "",
                "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555"
                        + "fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b");
        signs(
                Keys.TEST_2,
                "72",
                "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da0"
                        + "85ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00");
        signs(
                Keys.TEST_3,
                "af82",
                "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac1"
                        + "8ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a");
    }

    private static void signs(KeyPair pair, String message, String published) throws GeneralSecurityException {
        Signature signature = Signature.getInstance("Ed25519");
        signature.initSign(pair.getPrivate());
        signature.update(HexFormat.of().parseHex(message));
        Published.check("RFC 8032 section 7.1", published, HexFormat.of().formatHex(signature.sign()));
        for (int bit = 0; bit < published.length() * 4; bit++) {
            byte[] changed = HexFormat.of().parseHex(published);
            changed[bit / 8] ^= (byte) (1 << bit % 8);
            assertFalse(verifies(pair, message, changed), published + ", bit " + bit);
        }
        assertTrue(verifies(pair, message, HexFormat.of().parseHex(published)));
    }

    private static boolean verifies(KeyPair pair, String message, byte[] signed) throws GeneralSecurityException {
        Signature signature = Signature.getInstance("Ed25519");
        signature.initVerify(pair.getPublic());
        signature.update(HexFormat.of().parseHex(message));
        try {
            return signature.verify(signed);
        } catch (SignatureException e) {
            return false;
        }
    }

    @Test
    void theExampleOfTheFormat_holds() {
        VerifierKey key = VerifierKey.parse("example.com/foo+530d903a+AekyeRrm56hApGFkyQR4ZCbV54Id2LKaANYcrnKv3U2k");
        SignedNote note = SignedNote.parse(
                "This is an example message.\n\n— example.com/foo Uw2QOkn8srV1yJGh2VYRlL1Tnagv1YEq6TfXppzi2ONncAlTgK7Ztg1ERYNZXsYjOBH3mFXmRKuwHjG1Yu72IneyaQM=\n");
        Published.check(NOTES, List.of(key), note.signers(List.of(key)));
        Published.check(NOTES, "530d903a", key.id());
    }

    @ParameterizedTest
    @CsvSource({
        "30055305,mXfgRcJ0bG0j3CPdKwgGWtUzBUbX67saZGRmFuJGGsM=,Az3grpgEild5qw7+5dtV13Kf1C2Xurm8q4fhdxvcsDHnqNTaxL2AFjBY+2TyGKevucFcAAlWFJJYle3EJlDCrQ+y3A8=",
        "15081221,BoMMe1wd25Tco0mYGROkyqxHZWx+hcSCtMV315Lu6Lg=,Az3grilD7vQqTrv66jRgKM84Y80KTprrSt4bKmiOPxgmS5ZVBTeCl6dUvjYnN13R+C8j0jGY1WnUADGMkok3U0m2Zgo=",
        "63096908,8lHrQPRYe4KT4WQ9/Qk8/taKnD6IRHbFgfN7vQE2Y54=,Az3gri/oVBN1jAhNZ/iS+W31psFAWRT20/GyrhpU6taFwulQGetBkH5S7wpGXdS935jiIGiUUAXBVHzT/P6fYhqAmAk="
    })
    void publicCheckpoints_hold(long size, String root, String signature) {
        SignedNote note = SignedNote.parse(
                "go.sum database tree\n" + size + "\n" + root + "\n\n— sum.golang.org " + signature + "\n");
        Published.check("a public log of module checksums", List.of(SUM), note.signers(List.of(SUM)));
        assertEquals(new Checkpoint("go.sum database tree", size, Hash.ofBase64(root)), Checkpoint.parse(note.text()));
    }

    /** As an example of a document that was made so: the text of a true checkpoint with another first line and key name holds for nobody. */
    @Test
    void aPublicCheckpoint_underAnotherNameOrFirstLine_doesNotHold() {
        String root = "mXfgRcJ0bG0j3CPdKwgGWtUzBUbX67saZGRmFuJGGsM=";
        String signature =
                "Az3grpgEild5qw7+5dtV13Kf1C2Xurm8q4fhdxvcsDHnqNTaxL2AFjBY+2TyGKevucFcAAlWFJJYle3EJlDCrQ+y3A8=";
        for (String[] changed : new String[][] {
            {"example.com/other", "sum.golang.org"},
            {"go.sum database tree", "example.com/other"},
            {"example.com/other", "example.com/other"}
        }) {
            SignedNote note = SignedNote.parse(
                    changed[0] + "\n30055305\n" + root + "\n\n— " + changed[1] + " " + signature + "\n");
            assertThrows(IllegalArgumentException.class, () -> note.signers(List.of(SUM)), changed[0] + changed[1]);
        }
    }

    @Test
    void cosignature_ofAPublishedTest() {
        KeyPair pair =
                Keys.pair("11" + "00".repeat(31), "66e0b858e462a609e66fe71370c816d8846ff103d5499a22a7fec37fdbc424a7");
        String root = "HA5HAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA=";
        SigningKey witness = new SigningKey("example.org/witness", VerifierKey.WITNESS, pair);
        String source = "C2SP tlog-cosignature";
        Published.check(source, "cacf2e50", witness.verifier().id());
        Published.check(
                source,
                "— example.org/witness ys8uUAAAAAAAAATSftMzceM8zssdZ9jin9SjwIxzx9iADMf63VqirX2hafol9RsqNqbofIz0LVRqHXI2kpEBSki5RTXFtxz1vo9+Cg==",
                witness.cosign("example.org/log\n10\n" + root + "\n", 1234).toString());
        SigningKey log = new SigningKey(
                "sigsum.org/v1/tree/e796172b92befd62d9dc67e41c2f5bc9d3100a3023b20b1ca40288dd1c679e69",
                VerifierKey.LOG,
                pair);
        Published.check(source, "809da1a3", log.verifier().id());
        SignedNote.Line signed = log.sign(log.verifier().name() + "\n10\n" + root + "\n");
        Published.check(
                source,
                "gJ2ho0n8F8olcerUF1FFdv235A/5as/coWrpLrtE7ovMeP5whgwouYExowG/lTznxu6OUGjjt5yJQ6bXtTcf718MqAQ=",
                signed.toString().substring(signed.toString().lastIndexOf(' ') + 1));
    }

    @Test
    void aSmallLog_hasTheValuesOfTheSpecification() {
        assertEquals(
                "log.shop.example/trail+c745b9b6+AddamAGCsQq31Uv+08lkBzoO4XLz2qYjJa8CGmj3B1Ea",
                LOG.verifier().toString());
        assertEquals(
                "log.shop.example/trail+abb50fc4+AfxRzY5iGKGjjaR+0AIw8FgIFu0TujMDrF3rkRVIkIAl",
                NEXT.verifier().toString());
        assertEquals(
                "witness.example/w1+04d2d833+BD1AF8PoQ4lakrcKp00bfrycmCzPLsSWjMDNVfEq9GYM",
                WITNESS.verifier().toString());
        assertEquals(
                "addfde36fc34788144590105844dda55dc0962b5e689ab9a817320e7c56f1874",
                Hash.sha256(utf8("log.shop.example/trail")).hex());
        SignedNote alone = new SignedNote(TEXT, List.of(LOG.sign(TEXT)));
        SignedNote note = alone.with(List.of(WITNESS.cosign(TEXT, 1_767_225_600)));
        assertEquals(NOTE, note);
        assertEquals(
                "4a64ff96c70815bb84009b962c20500977e9d775b9c5b8c49ccb167f3f67b3d4",
                Hash.sha256(note.bytes()).hex());
        assertEquals(
                "— log.shop.example/trail q7UPxMG4jC9lD0bC8ehWoNfEhgezH8D7hQTMllFAkjZ8Xf/t8Ue/yVCHfWKEgZnEh8d05WePjrkJSkxY3E5cvD7l/w0=",
                NEXT.sign(TEXT).toString());
        assertEquals(1_767_225_600, Cosignature.time(note.by(WITNESS.verifier()).get(0)));
        assertEquals(
                List.of(LOG.verifier(), WITNESS.verifier()), note.signers(List.of(LOG.verifier(), WITNESS.verifier())));
        List<Hash> path = List.of(
                        "rex1xsxJpwyVLdonNOTqu8aLlmGWtd2AeyFJMJGGAvs=",
                        "uc9IndOl0JKMx5Kns2pHEKGS3LCYaPkGY5kMDocLT4Y=",
                        "+JMu1/qpq2+J0ubYoDZSDpnoPWMJ+npzgc8YrBzKv0s=",
                        "PAh2kJ7m2TgkI5Sgi5oK81XEqO0G6Q+faap0ejlEboc=")
                .stream()
                .map(Hash::ofBase64)
                .toList();
        AddCheckpoint asked = new AddCheckpoint(3, path, alone);
        assertEquals(378, utf8(asked.toString()).length);
        assertEquals(
                "3c335080aa3e0873e77aa084e2a199c57558b85bb2cb83845e8bf04254e13e4a",
                Hash.sha256(utf8(asked.toString())).hex());
        assertEquals(asked, AddCheckpoint.parse(asked.toString()));
    }

    /** With any one bit of it turned, the note is refused by whoever asks for both signatures. */
    @Test
    void aNoteWithOneBitTurned_isRefused() {
        byte[] bytes = NOTE.bytes();
        int refused = 0;
        for (int bit = 0; bit < bytes.length * 8; bit++) {
            bytes[bit / 8] ^= (byte) (1 << bit % 8);
            if (!holds(bytes)) {
                refused++;
            }
            bytes[bit / 8] ^= (byte) (1 << bit % 8);
        }
        assertTrue(holds(bytes));
        assertEquals(bytes.length * 8, refused);
    }

    private static boolean holds(byte[] note) {
        try {
            List<VerifierKey> both = List.of(LOG.verifier(), WITNESS.verifier());
            return SignedNote.parse(note).signers(both).equals(both);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    @Test
    void anUnknownSignature_isPassedOver_andAKnownOneThatFailsSpoilsTheNote() {
        SignedNote note = NOTE.with(List.of(NEXT.sign(TEXT)));
        assertEquals(List.of(LOG.verifier()), note.signers(List.of(LOG.verifier())));
        SignedNote spoilt = NOTE.with(List.of(LOG.sign("another text\n")));
        assertThrows(IllegalArgumentException.class, () -> spoilt.signers(List.of(LOG.verifier())));
        assertEquals(List.of(WITNESS.verifier()), spoilt.signers(List.of(WITNESS.verifier())));
        assertThrows(IllegalArgumentException.class, () -> NOTE.signers(List.of(NEXT.verifier())));
    }

    @Test
    void manySignatures_areTaken() {
        List<SignedNote.Line> lines = IntStream.range(0, 20)
                .mapToObj(i -> new SigningKey("k" + i, VerifierKey.LOG, Keys.TEST_2).sign(TEXT))
                .toList();
        assertEquals(22, SignedNote.parse(NOTE.with(lines).bytes()).lines().size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "text\n",
                "text\n\n",
                "text\n\n— a\n",
                "text\n\n— a b c\n",
                "text\n\n- a AAAAAAA=\n",
                "text\n\n— a+b AAAAAAA=\n",
                "text\n\n—  AAAAAAA=\n",
                "text\n\n— a AAAA\n",
                "text\n\n— a AAAAAAA\n",
                "text\n\n— a AAAAAAB=\n",
                "text\n\n— a AAAAAAA=",
                "te\txt\n\n— a AAAAAAA=\n",
                "te\rxt\n\n— a AAAAAAA=\n"
            })
    void anythingElse_isNoNote(String text) {
        assertThrows(IllegalArgumentException.class, () -> SignedNote.parse(text));
    }

    @Test
    void theTextEnds_atTheLastEmptyLine() {
        assertEquals(
                "one\n\ntwo\n", SignedNote.parse("one\n\ntwo\n\n— a AAAAAAA=\n").text());
        assertThrows(IllegalArgumentException.class, () -> SignedNote.parse(new byte[] {(byte) 0xff, '\n'}));
        assertThrows(
                IllegalArgumentException.class,
                () -> SignedNote.parse("x".repeat(SignedNote.LARGEST) + "\n\n— a AAAAAAA=\n"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "o\n05\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n",
                "o\n-1\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n",
                "o\n9223372036854775808\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n",
                "\n5\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\n",
                "o\n5\n47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFV=\n",
                "o\n5\n47DEQpj8HBSa+/TImW+5\n",
                "o\n5\n"
            })
    void anythingElse_isNoCheckpoint(String text) {
        assertThrows(IllegalArgumentException.class, () -> Checkpoint.parse(text));
    }

    @Test
    void furtherLinesOfACheckpoint_areAllowed() {
        assertEquals(5, Checkpoint.parse(TEXT + "more\n").size());
        assertEquals(
                Long.MAX_VALUE,
                Checkpoint.parse(TEXT.replace("\n5\n", "\n9223372036854775807\n"))
                        .size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "log.shop.example/trail+c745b9b7+AddamAGCsQq31Uv+08lkBzoO4XLz2qYjJa8CGmj3B1Ea",
                "log.shop.example/trail+c745b9b6",
                "+c745b9b6+AddamAGCsQq31Uv+08lkBzoO4XLz2qYjJa8CGmj3B1Ea",
                "log.shop.example/trail+C745B9B6+AddamAGCsQq31Uv+08lkBzoO4XLz2qYjJa8CGmj3B1Ea"
            })
    void anythingElse_isNoKey(String text) {
        assertThrows(IllegalArgumentException.class, () -> VerifierKey.parse(text));
    }

    @Test
    void keysThatDoNotBelongTogether_areRefused() {
        KeyPair mixed = new KeyPair(Keys.TEST_1.getPublic(), Keys.TEST_2.getPrivate());
        assertThrows(IllegalArgumentException.class, () -> new SigningKey("a", VerifierKey.LOG, mixed));
    }

    @Test
    void aProof_isReadBackAndHoldsForItsLeafOnly() {
        GrownTree tree = new GrownTree();
        List<Leaf> leaves = IntStream.rangeClosed(1, 9)
                .mapToObj(i -> new Leaf("cases", i, Hash.EMPTY_TREE))
                .toList();
        leaves.forEach(leaf -> tree.add(leaf.bytes()));
        String text = new Checkpoint("log.shop.example/trail", 9, tree.root()).text();
        ProofFile proof = new ProofFile(4, tree.at(9).inclusion(4), new SignedNote(text, List.of(LOG.sign(text))));
        ProofFile read = ProofFile.parse(proof.toString());
        assertEquals(proof, read);
        assertTrue(read.holds(leaves.get(4)));
        assertFalse(read.holds(leaves.get(5)));
        assertEquals(proof, ProofFile.parse(proof.toString().replace("\nindex", "\nextra AAAA\nindex")));
        assertThrows(
                IllegalArgumentException.class,
                () -> ProofFile.parse(proof.toString().replace("@v1", "@v2")));
        assertThrows(
                IllegalArgumentException.class,
                () -> ProofFile.parse(proof.toString().replace("index 4", "index 04")));
    }

    @Test
    void commitment_hasTheValueOfTheSpecification() {
        byte[] salt = new byte[32];
        for (int i = 0; i < 32; i++) {
            salt[i] = (byte) i;
        }
        assertEquals(
                "c8ed8d4d0f6761e31daefe6d5a4a41b8a3ab0141e1cddd1d588f77f9f28245d3",
                Commitment.of(salt, "requester.name", "R. Example").hex());
        assertEquals(Commitment.of(salt, "a", "\u00e9"), Commitment.of(salt, "a", "e\u0301"));
        assertThrows(IllegalArgumentException.class, () -> Commitment.of(new byte[16], "a", "b"));
    }

    private static String policy(String end) {
        return "# ours\nlog " + LOG.verifier() + " https://log.shop.example/trail\nwitness w1 " + WITNESS.verifier()
                + "\nwitness w2 " + new SigningKey("w2", VerifierKey.WITNESS, Keys.TEST_3).verifier()
                + "\twitness.example/2 # by hand\nwitness w3 " + new VerifierKey("w3", 6, new byte[1312]) + "\n" + end;
    }

    @ParameterizedTest
    @CsvSource({
        "quorum none, NOBODY_ASKED",
        "quorum w1, MET",
        "quorum w2, NOT_MET",
        "quorum w3, NOT_MET",
        "group g any w1 w2\\nquorum g, MET",
        "group g all w1 w2\\nquorum g, NOT_MET",
        "group g 2 w1 w2 w3\\nquorum g, NOT_MET",
        "group g any w2 w3\\ngroup h any g w1\\nquorum h, MET"
    })
    void aPolicy_saysWhetherEnoughSigned(String end, WitnessPolicy.Vouching expected) {
        assertEquals(
                expected, WitnessPolicy.parse(policy(end.replace("\\n", "\n"))).vouching(NOTE));
    }

    @Test
    void aSignatureOfAnotherKind_cannotBeToldFromATrueOne() {
        VerifierKey other = new VerifierKey("w3", 6, new byte[1312]);
        byte[] line = new byte[2424];
        System.arraycopy(HexFormat.of().parseHex(other.id()), 0, line, 0, 4);
        SignedNote note = NOTE.with(List.of(new SignedNote.Line("w3", line)));
        assertEquals(
                WitnessPolicy.Vouching.CANNOT_TELL,
                WitnessPolicy.parse(policy("quorum w3\n")).vouching(note));
        assertEquals(1, WitnessPolicy.parse(policy("quorum none\n")).logs().size());
        assertEquals(3, WitnessPolicy.parse(policy("quorum none\n")).witnesses().size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "quorum w4",
                "quorum w1\nquorum w2",
                "group g any w4\nquorum g",
                "group g 3 w1 w2\nquorum g",
                "group g 0 w1 w2\nquorum g",
                "group g any w1 w1\nquorum g",
                "group w1 any w2\nquorum w1",
                "witness w1 x+00000000+AAAA\nquorum none",
                "something\nquorum none",
                "group none any w1\nquorum none"
            })
    void anythingElse_isNoPolicy(String end) {
        assertThrows(IllegalArgumentException.class, () -> WitnessPolicy.parse(policy(end)));
    }

    @Test
    void aPolicy_takesManyParties() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 40; i++) {
            text.append("witness w")
                    .append(i)
                    .append(' ')
                    .append(WITNESS.verifier())
                    .append('\n');
        }
        text.append("group all all ")
                .append(String.join(
                        " ", IntStream.range(0, 40).mapToObj(i -> "w" + i).toList()));
        WitnessPolicy policy = WitnessPolicy.parse(text + "\nquorum all\n");
        assertEquals(WitnessPolicy.Vouching.MET, policy.vouching(NOTE));
        assertEquals(
                40,
                Collections.frequency(
                        policy.witnesses().stream()
                                .map(WitnessPolicy.Party::key)
                                .toList(),
                        WITNESS.verifier()));
    }
}
