package org.benchtrail.seal.offline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.integrity.Checkpoint;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verifier on the file of one ticket's trail: as it is, with any byte turned, and as somebody would make it who wants to hide. */
@BesideOthers
class TrailVerifierTest {
    private static final String TICKET = "40718-6";

    @TempDir
    Path folder;

    private Path policy = Path.of("");
    private String said = "";

    private static SmallExport small() {
        return new SmallExport()
                .site("keys", "first")
                .entry(TICKET, "opened")
                .site("accounts", "roles of ines")
                .entry(TICKET, "a reading of 5 \u00b5V")
                .entry("40719-4", "opened")
                .entry(TICKET, "advanced");
    }

    private static String trail() {
        return small().trail(TICKET, 3);
    }

    @BeforeEach
    void policy() throws IOException {
        policy = Files.writeString(folder.resolve("policy"), SmallExport.POLICY);
    }

    private int bare(byte[] file, String... further) {
        try {
            Path written = Files.write(folder.resolve("trail.jsonl"), file);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            int exit = VerifyCommand.run(
                    Stream.concat(Stream.of(written.toString()), Stream.of(further))
                            .toList(),
                    new PrintStream(out, true, StandardCharsets.UTF_8));
            said = out.toString(StandardCharsets.UTF_8);
            return exit;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private int verify(String file) {
        return bare(file.getBytes(StandardCharsets.UTF_8), "--policy", policy.toString());
    }

    private void refused(String what, String file) {
        assertEquals(VerifyReport.DOES_NOT_HOLD, verify(file), what);
        assertTrue(said.contains(what), said);
    }

    @Test
    void aTrail_holds_andSaysHowFar() {
        assertEquals(VerifyReport.HOLDS, verify(trail()), said);
        assertTrue(
                said.contains(
                        "3 entries were looked at. That there is no further one is shown by the whole log only: give --leaves."));
        assertEquals(VerifyReport.CANNOT_TELL, bare(trail().getBytes(StandardCharsets.UTF_8)), "nobody vouches");
        Checkpoint head = small().head(6);
        byte[] file = trail().getBytes(StandardCharsets.UTF_8);
        assertEquals(
                VerifyReport.HOLDS,
                bare(file, "--earlier", 6 + ":" + head.root().base64()));
        assertEquals(
                VerifyReport.DOES_NOT_HOLD,
                bare(file, "--earlier", 6 + ":" + small().head(5).root().base64()));
        assertEquals(
                VerifyReport.CANNOT_TELL,
                bare(
                        file,
                        "--policy",
                        policy.toString(),
                        "--earlier",
                        5 + ":" + small().head(5).root().base64()));
        assertTrue(said.contains("give --leaves with the exported log for that"), said);
    }

    /** One byte more or less in its value, anywhere: it never holds, and only in the witness' line nobody can tell. */
    @Test
    void anyByteTurned_isRefused() {
        byte[] file = trail().getBytes(StandardCharsets.UTF_8);
        String text = new String(file, StandardCharsets.ISO_8859_1);
        int witness = text.indexOf("witness.example/w1");
        int end = text.indexOf('\n', witness);
        for (int at = 0; at < file.length; at++) {
            byte[] turned = file.clone();
            turned[at] ^= (byte) (1 << at % 8);
            int exit = bare(turned, "--policy", policy.toString());
            boolean witnessLine = at >= witness - 8 && at <= end;
            assertTrue(
                    exit == VerifyReport.DOES_NOT_HOLD
                            || exit == VerifyReport.NO_EXPORT
                            || (exit == VerifyReport.CANNOT_TELL && witnessLine),
                    "byte " + at + " of " + text.length() + ": " + said);
        }
    }

    @Test
    void anyByteLeftOut_orDoubled_isRefused() {
        byte[] file = trail().getBytes(StandardCharsets.UTF_8);
        for (int at = 0; at < file.length; at += 3) {
            ByteArrayOutputStream changed = new ByteArrayOutputStream();
            changed.write(file, 0, at);
            changed.write(file, at + 1, file.length - at - 1);
            if (at % 4 == 0) {
                changed.reset();
                changed.write(file, 0, at + 1);
                changed.write(file, at, file.length - at);
            }
            assertTrue(
                    bare(changed.toByteArray(), "--policy", policy.toString()) != VerifyReport.HOLDS,
                    "byte " + at + ": " + said);
        }
    }

    @Test
    void lines_leftOut_movedOrTaken_areRefused() {
        List<String> lines = new ArrayList<>(trail().lines().toList());
        refused("chain: entry 2", String.join("\n", lines.get(0), lines.get(1), lines.get(3)) + "\n");
        refused("chain: entry 1", String.join("\n", lines.get(0), lines.get(2), lines.get(1), lines.get(3)) + "\n");
        refused("chain: entry 3", String.join("\n", lines.get(0), lines.get(1), lines.get(2), lines.get(2)) + "\n");
        refused("something was cut off", trail().stripTrailing());
        refused("something was cut off", lines.get(0));
        String other = small().trail("40719-4", 1).lines().toList().get(1);
        refused("chain: entry 1", lines.get(0) + "\n" + other + "\n");
        // the end left out is not seen, and it is said so
        assertEquals(VerifyReport.HOLDS, verify(String.join("\n", lines.subList(0, 3)) + "\n"));
        assertTrue(said.contains("2 entries were looked at. That there is no further one"), said);
        assertEquals(VerifyReport.NO_EXPORT, verify(""));
        assertEquals(VerifyReport.NO_EXPORT, verify("{}\n"));
    }

    /** With all leaves of the log nothing of the ticket can be left out at its end, and a head of any size is held against it. */
    @Test
    void allLeaves_showThatNothingIsLeftOut_andThatTheLogGoesOn() throws IOException {
        Path log = folder.resolve("log");
        SmallExport more = small().entry("40719-4", "advanced");
        more.write(log, true);
        String earlier = small().head(4).size() + ":" + small().head(4).root().base64();
        String later = more.head(7).size() + ":" + more.head(7).root().base64();
        for (String held : List.of(earlier, later)) {
            assertEquals(VerifyReport.CANNOT_TELL, bare(bytes(trail()), "--earlier", held));
            assertTrue(said.contains("give --leaves"), said);
            assertEquals(
                    VerifyReport.HOLDS,
                    bare(bytes(trail()), "--earlier", held, "--leaves", log.toString()),
                    () -> said);
            assertTrue(said.contains("The ticket has no further entry among the 6 leaves"), said);
            String wrong = held.replaceFirst(":..", ":AA");
            assertEquals(
                    VerifyReport.DOES_NOT_HOLD,
                    bare(bytes(trail()), "--earlier", wrong, "--leaves", log.toString()),
                    () -> said);
            assertTrue(said.contains("earlier head: leaves below"), said);
        }
        List<String> lines = trail().lines().toList();
        String cut = String.join("\n", lines.subList(0, 3)) + "\n";
        assertEquals(VerifyReport.HOLDS, verify(cut), "by itself nothing shows it");
        assertEquals(VerifyReport.DOES_NOT_HOLD, bare(bytes(cut), "--leaves", log.toString()));
        assertTrue(said.contains("has 3 leaves below this head, and the file has 2 sealed entries"), said);
    }

    @Test
    void leavesThatAreTooFew_orOfAnotherLog_orNone_showNothing() throws IOException {
        Path few = folder.resolve("few");
        new SmallExport().site("keys", "first").write(few, true);
        assertEquals(VerifyReport.CANNOT_TELL, bare(bytes(trail()), "--leaves", few.toString()));
        assertTrue(said.contains("end at 1, before leaf 6"), said);
        assertEquals(
                VerifyReport.CANNOT_TELL,
                bare(bytes(trail()), "--leaves", folder.resolve("none").toString()));
        Path other = folder.resolve("other");
        small().site("keys", "second").entry(TICKET, "more").write(other, true);
        Path strange = folder.resolve("strange");
        new SmallExport()
                .site("keys", "first")
                .entry(TICKET, "opened")
                .site("accounts", "roles of ines")
                .entry(TICKET, "another reading")
                .entry("40719-4", "opened")
                .entry(TICKET, "advanced")
                .write(strange, true);
        assertEquals(VerifyReport.DOES_NOT_HOLD, bare(bytes(trail()), "--leaves", strange.toString()));
        assertTrue(said.contains("have another root than the head of the ticket's file"), said);
        assertEquals(
                VerifyReport.HOLDS,
                bare(bytes(trail()), "--policy", policy.toString(), "--leaves", other.toString()),
                "what came after the head is none of its business");
    }

    @Test
    void json_saysTheSame_forAProgram() throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        assertEquals(VerifyReport.HOLDS, bare(bytes(trail()), "--json", "--policy", policy.toString()));
        JsonNode holds = mapper.readTree(said);
        assertEquals(0, holds.path("exit").asInt());
        assertTrue(holds.path("findings").isEmpty() && !holds.path("told").isEmpty(), said);
        assertEquals(
                VerifyReport.DOES_NOT_HOLD, bare(bytes(trail().replace("a reading of 5", "a reading of 6")), "--json"));
        JsonNode finding = mapper.readTree(said).path("findings").path(0);
        assertEquals("record", finding.path("check").asText());
        assertEquals("entry 2", finding.path("where").asText());
        assertEquals(VerifyReport.NO_EXPORT, bare(bytes("{}"), "--json"));
        assertEquals(3, mapper.readTree(said).path("exit").asInt());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void whatIsNotSealed_orNotShown_isTold() {
        assertEquals(VerifyReport.CANNOT_TELL, verify(small().trail(TICKET, 2)));
        assertTrue(said.contains("The last 1 of them are not sealed by this head."), said);
        List<String> lines = trail().lines().toList();
        String unsealed = small().trail(TICKET, 0).lines().toList().get(1);
        refused("sealed before an entry", String.join("\n", lines.get(0), unsealed, lines.get(2), lines.get(3)) + "\n");
        String veiled = lines.get(2).replaceFirst("\"entry\":\"(?:[^\"\\\\]|\\\\.)*\"", "\"entry\":null");
        assertEquals(
                VerifyReport.CANNOT_TELL,
                verify(String.join("\n", lines.get(0), lines.get(1), veiled, lines.get(3)) + "\n"));
        assertTrue(said.contains("1 of them are shown by their hash alone."), said);
        String another = veiled.replaceFirst("\"hash\":\"..", "\"hash\":\"ff");
        refused("proof: entry 2", String.join("\n", lines.get(0), lines.get(1), another, lines.get(3)) + "\n");
    }
}
