package org.benchtrail.seal.offline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verifier on exports as they are, and as somebody makes them who owns the database, or the key as well. */
class FolderVerifierTest {
    @TempDir
    Path folder;

    @TempDir
    Path besides;

    private Path policy = Path.of("");
    private String earlier = "";
    private String said = "";

    private static SmallExport three() {
        return new SmallExport()
                .site("keys", "first")
                .entry("40718-6", "opened")
                .site("accounts", "roles of ines");
    }

    private static SmallExport five() {
        return three().entry("40718-6", "a reading").entry("40718-6", "advanced");
    }

    private static String typed(Checkpoint head) {
        return head.size() + ":" + head.root().base64();
    }

    @BeforeEach
    void export() throws IOException {
        policy = Files.writeString(besides.resolve("policy"), SmallExport.POLICY);
        earlier = typed(three().head(3));
        five().write(folder, true);
    }

    private int verify(String... further) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int exit = VerifyCommand.run(
                Stream.concat(Stream.of(folder.toString()), Stream.of(further)).toList(),
                new PrintStream(out, true, StandardCharsets.UTF_8));
        said = out.toString(StandardCharsets.UTF_8);
        return exit;
    }

    @Test
    void whatIsWitnessed_holds() {
        assertEquals(0, verify("--policy", policy.toString()), () -> said);
        assertTrue(said.startsWith("Holds.\n"), said);
        assertTrue(said.contains("5 records of 3 streams were looked at."), said);
    }

    @Test
    void anEarlierHead_typedFromPaper_orAsANote_vouches() throws IOException {
        assertEquals(0, verify("--earlier", earlier), () -> said);
        Path other = besides.resolve("other");
        three().write(other, false);
        assertEquals(0, verify("--earlier", other.resolve("checkpoint").toString()), () -> said);
        assertTrue(said.contains("The earlier head of 3 leaves that you gave is contained."), said);
    }

    /** Somebody who types 44 characters from paper makes slips: each is told as what it is. */
    @Test
    void aTypedHead_withASlip_isToldAsOne() {
        String root = earlier.substring(2);
        assertEquals(3, verify("--earlier", "3:" + root.substring(1)), () -> said);
        assertTrue(said.contains("A root has 44 characters, and this one has 43"), said);
        assertEquals(3, verify("--earlier", "3:" + root.substring(0, 20) + "\u2013" + root.substring(21)), () -> said);
        assertTrue(said.contains("No root is written like this"), said);
        assertEquals(3, verify("--earlier", "9999999999999999999:" + root), () -> said);
        assertTrue(said.contains("No log has 9999999999999999999 leaves"), said);
        char other = root.charAt(5) == 'A' ? 'B' : 'A';
        assertEquals(1, verify("--earlier", "3:" + root.substring(0, 5) + other + root.substring(6)), () -> said);
        assertTrue(said.contains("or a character of the root was typed wrongly"), said);
    }

    @Test
    void whoeverAsksForHelp_getsIt() {
        for (String word : List.of("--help", "-h")) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            assertEquals(3, VerifyCommand.run(List.of(word), new PrintStream(out, true, StandardCharsets.UTF_8)));
            assertTrue(
                    out.toString(StandardCharsets.UTF_8)
                            .contains("--earlier SIZE:ROOT    a head that you have on paper"),
                    word);
        }
    }

    @Test
    void withoutSomebodyOutside_itCannotBeTold() throws IOException {
        assertEquals(2, verify(), () -> said);
        five().write(folder, false);
        assertEquals(2, verify("--policy", policy.toString()), () -> said);
        assertTrue(said.contains("Too few witnesses"), said);
        Files.writeString(policy, SmallExport.POLICY.replace("quorum w1", "quorum none"));
        assertEquals(2, verify("--policy", policy.toString()), () -> said);
        assertTrue(said.contains("Signed by the shop alone. Nobody else has seen this head."), said);
    }

    /** The shop takes the outsider's witness away and lets one of its own sign: what counts is whom the outsider named. */
    @Test
    void aWitnessOfTheShopsOwn_isNoneOfTheOutsiders() throws IOException {
        SigningKey own = new SigningKey("witness.example/own", VerifierKey.WITNESS, Keys.TEST_3);
        SigningKey ownByThatName = new SigningKey("witness.example/w1", VerifierKey.WITNESS, Keys.TEST_3);
        for (SigningKey witness : List.of(own, ownByThatName)) {
            String text = five().head(5).text();
            SignedNote note = new SignedNote(text, List.of(SmallExport.LOG.sign(text)));
            Files.write(
                    folder.resolve("checkpoint"),
                    note.with(List.of(witness.cosign(text, 1_767_225_600))).bytes());
            Files.writeString(
                    folder.resolve("policy"),
                    "log " + SmallExport.LOG.verifier() + "\nwitness w1 " + witness.verifier() + "\nquorum w1\n");
            assertEquals(2, verify("--policy", policy.toString()), () -> said);
            assertTrue(said.contains("Too few witnesses"), said);
            assertEquals(0, verify("--policy", folder.resolve("policy").toString()), () -> said);
        }
    }

    @Test
    void somethingElse_isNoExport() throws IOException {
        Files.writeString(folder.resolve("checkpoint"), "nothing of the kind\n");
        assertEquals(3, verify("--earlier", earlier));
        Files.delete(folder.resolve("checkpoint"));
        assertEquals(3, verify());
        assertEquals(3, verify("--policy"));
        assertEquals(3, verify("--policy", besides.resolve("missing").toString()));
        assertEquals(3, verify("--unknown", "x"));
        assertEquals(
                3,
                VerifyCommand.run(
                        List.of(), new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8)));
    }

    /** Each byte is turned once: the verifier never says that the export holds, and of a record it names the place. */
    @Test
    void oneByteTurnedAnywhere_isNamed() throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.walk(folder)) {
            files = all.filter(Files::isRegularFile).toList();
        }
        assertEquals(4, files.size());
        List<String> passed = new ArrayList<>();
        int turned = 0;
        for (Path file : files) {
            byte[] bytes = Files.readAllBytes(file);
            boolean head = file.endsWith("checkpoint");
            for (int i = 0; i < bytes.length; i++) {
                bytes[i] ^= 1;
                Files.write(file, bytes);
                bytes[i] ^= 1;
                int exit = head
                        ? verify("--policy", policy.toString(), "--earlier", earlier)
                        : verify("--earlier", earlier);
                turned++;
                if (file.getParent().endsWith("records/000.p") && bytes[i] != '\n' && !said.contains(place(bytes, i))) {
                    passed.add("record, byte " + i + ": " + said);
                }
                if (head ? exit != 1 && exit != 3 && !isWitnessLine(i, bytes) : exit != 1) {
                    passed.add(file.getFileName() + " byte " + i + ": " + exit);
                }
            }
            Files.write(file, bytes);
        }
        assertTrue(turned > 1500, "only " + turned);
        assertEquals(List.of(), passed);
        assertEquals(0, verify("--policy", policy.toString(), "--earlier", earlier), () -> said);
    }

    /** What the line is of in which that byte stands. */
    private static String place(byte[] records, int at) {
        String text = new String(records, StandardCharsets.UTF_8);
        String line = text.substring(text.lastIndexOf('\n', at - 1) + 1, text.indexOf('\n', at));
        Matcher entry =
                Pattern.compile("\"entry\":(\\d+).*\"ticket\":\"([^\"]*)\"").matcher(line);
        Matcher record =
                Pattern.compile("\"place\":(\\d+).*\"stream\":\"([^\"]*)\"").matcher(line);
        return entry.find()
                ? "ticket/" + entry.group(2) + " " + entry.group(1)
                : record.find() ? record.group(2) + " " + record.group(1) : line;
    }

    /** Who spoils the name of a signer takes that signature away, and no more. */
    private static boolean isWitnessLine(int at, byte[] note) {
        return at > new String(note, StandardCharsets.UTF_8).indexOf("\u2014 witness.example");
    }

    /** The owner of the database rewrites an entry and everything that follows from it, but has no key. */
    @Test
    void aRewrittenRecord_withItsChainLeavesAndTiles_isNamedByTheRoot() throws IOException {
        byte[] head = Files.readAllBytes(folder.resolve("checkpoint"));
        three().entry("40718-6", "another reading").entry("40718-6", "advanced").write(folder, true);
        Files.write(folder.resolve("checkpoint"), head);
        assertEquals(1, verify("--policy", policy.toString()), () -> said);
        assertTrue(said.contains("root: checkpoint: the leaves have another root than the head"), said);
    }

    /** And signs the rewritten log with the key: only a head that somebody else keeps shows it. */
    @Test
    void aRewrittenLog_signedAgain_isNamedByTheEarlierHead() throws IOException {
        new SmallExport()
                .site("keys", "first")
                .entry("40718-6", "opened otherwise")
                .site("accounts", "roles of ines")
                .entry("40718-6", "a reading")
                .entry("40718-6", "advanced")
                .write(folder, true);
        assertEquals(0, verify("--policy", policy.toString()), () -> said);
        assertEquals(1, verify("--policy", policy.toString(), "--earlier", earlier), () -> said);
        assertTrue(said.contains("earlier head: leaves below 3: are not those of the head that you hold"), said);
    }

    @Test
    void aShorterLog_isNamedByTheEarlierHead() {
        assertEquals(
                1, verify("--earlier", typed(five().entry("40718-6", "closed").head(6))), () -> said);
        assertTrue(said.contains("has 5 leaves, and the head that you hold has 6"), said);
    }

    @Test
    void aLogOfAnotherKey_isNamed() throws IOException {
        Files.writeString(
                policy,
                SmallExport.POLICY.replace(
                        SmallExport.LOG.verifier().toString(),
                        new SigningKey("log.shop.example/trail", VerifierKey.LOG, Keys.TEST_3)
                                .verifier()
                                .toString()));
        assertEquals(1, verify("--policy", policy.toString()), () -> said);
        assertTrue(said.contains("signature: checkpoint: no known key signed this note"), said);
    }

    @Test
    void aMissingRecord_andAFileThatDoesNotBelong_areNamed() throws IOException {
        Path records = folder.resolve("records/000.p/5");
        String text = Files.readString(records);
        Files.writeString(records, text.substring(0, text.length() / 2));
        assertEquals(1, verify("--earlier", earlier), () -> said);
        assertTrue(said.contains("record: records/000.p/5: has not one line for each of 5 leaves"), said);
        Files.delete(records);
        assertEquals(1, verify("--earlier", earlier), () -> said);
        assertTrue(said.contains("is missing in records/000.p/5"), said);
        Files.writeString(records, text);
        Files.writeString(folder.resolve("tile/0/001"), "x");
        assertEquals(1, verify("--earlier", earlier), () -> said);
        assertTrue(said.contains("tile: tile/0/001: is nothing that a log of 5 leaves has"), said);
    }

    /** The writer was killed in the middle of a file: nothing of the log is in it, and the log holds. */
    @Test
    void aFileThatWasBegun_isNoPartOfTheLog() throws IOException {
        Files.writeString(folder.resolve("tile/0/000.p/4.partial-file"), "half");
        Files.writeString(folder.resolve("tile/entries/000.p/5.partial-file"), "");
        assertEquals(0, verify("--policy", policy.toString()), () -> said);
        Files.writeString(folder.resolve("tile/0/000.p/4.partial"), "half");
        assertEquals(1, verify("--policy", policy.toString()), () -> said);
    }

    /** The writer was killed between the tiles and the next head: the folder is of the head that stands there. */
    @Test
    void tilesAheadOfTheHead_areTold_andNotForeign_unlessTheyAreOfAnotherLog() throws IOException {
        three().write(folder, true);
        assertEquals(0, verify("--policy", policy.toString()), () -> said);
        assertTrue(said.contains("2 tiles go on after the head"), said);
        Path ahead = folder.resolve("tile/0/000.p/5");
        byte[] tile = Files.readAllBytes(ahead);
        tile[40] ^= 1;
        Files.write(ahead, tile);
        assertEquals(1, verify("--policy", policy.toString()), () -> said);
        assertTrue(said.contains("tile/0/000.p/5: is nothing that a log of 3 leaves has"), said);
    }

    @Test
    void aLogFolderWithoutRecords_isVerifiedAsFarAsItGoes() throws IOException {
        Files.delete(folder.resolve("records/000.p/5"));
        Files.delete(folder.resolve("records/000.p"));
        Files.delete(folder.resolve("records"));
        assertEquals(0, verify("--earlier", earlier), () -> said);
        assertTrue(said.contains("what the leaves seal was not looked at"), said);
    }
}
