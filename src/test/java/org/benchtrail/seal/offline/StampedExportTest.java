package org.benchtrail.seal.offline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.seal.timestamp.TestAuthority;
import org.benchtrail.seal.timestamp.TimeStampAnswer;
import org.benchtrail.seal.timestamp.TimeStampRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Time-stamps in an exported log: of its head, of one that it contains, and of another. */
class StampedExportTest {
    private static final String SAID = "leaves existed at 2026-01-02T03:04:05Z, says CN=Test Authority.";

    @TempDir
    Path folder;

    @TempDir
    Path besides;

    private final TestAuthority authority = new TestAuthority();
    private String roots = "";
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

    @BeforeEach
    void export() throws IOException {
        roots = authority.roots(besides, true).toString();
        five().write(folder, true);
    }

    private byte[] stamp(Checkpoint head) {
        return authority.answer(new TimeStampRequest(TimeStampRequest.imprint(head.text()), BigInteger.TEN).der());
    }

    private Path put(long size, byte[] stamp) throws IOException {
        Path file = folder.resolve(ExportedStamps.name(size));
        Files.createDirectories(folder.resolve("timestamps"));
        return Files.write(file, stamp);
    }

    private int verify(String... further) {
        return verify(folder, further);
    }

    private int verify(Path export, String... further) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int exit = VerifyCommand.run(
                Stream.concat(Stream.of(export.toString()), Stream.of(further)).toList(),
                new PrintStream(out, true, StandardCharsets.UTF_8));
        said = out.toString(StandardCharsets.UTF_8);
        return exit;
    }

    @Test
    void stampsOfTheHead_andOfOneThatItContains_areTold_andVouchForNothing() throws IOException {
        put(3, stamp(three().head(3)));
        put(5, stamp(five().head(5)));
        assertEquals(2, verify("--timestamp-roots", roots), () -> said);
        assertTrue(said.contains("The head of 3 " + SAID), said);
        assertTrue(said.contains("The head of 5 " + SAID), said);
        String policy =
                Files.writeString(besides.resolve("policy"), SmallExport.POLICY).toString();
        assertEquals(0, verify("--timestamp-roots", roots, "--policy", policy), () -> said);
        assertEquals(0, verify("--policy", policy), () -> said);
        assertTrue(said.contains("whose it is cannot be told without --timestamp-roots"), said);
        assertFalse(said.contains(SAID), said);
    }

    @Test
    void aStampOfAnotherHead_doesNotHold() throws IOException {
        put(3, stamp(five().head(5)));
        assertEquals(1, verify("--timestamp-roots", roots), () -> said);
        assertTrue(said.contains("timestamps/3.tsr: It is of another head."), said);
    }

    @Test
    void aStampOfALargerHead_doesNotHold() throws IOException {
        put(6, stamp(five().head(5)));
        assertEquals(1, verify("--timestamp-roots", roots), () -> said);
        assertTrue(said.contains("timestamps/6.tsr: is of a head that this log does not have"), said);
    }

    @Test
    void aStampByAnother_orNone_orTooLong_doesNotHold() throws IOException {
        put(5, stamp(five().head(5)));
        assertEquals(
                1, verify("--timestamp-roots", authority.roots(besides, false).toString()), () -> said);
        assertTrue(said.contains("does not lead to a root that is trusted"), said);
        put(5, "garbage".getBytes(StandardCharsets.US_ASCII));
        assertEquals(1, verify("--timestamp-roots", roots), () -> said);
        put(5, new byte[TimeStampAnswer.LONGEST + 1]);
        assertEquals(1, verify("--timestamp-roots", roots), () -> said);
        assertTrue(said.contains("is longer than any answer is"), said);
    }

    /** Whoever asks after them learns where they are. */
    @Test
    void aFileOfOneTicket_saysThatItCarriesNone() throws IOException {
        Path trail = Files.writeString(besides.resolve("trail.jsonl"), five().trail("40718-6", 3));
        assertEquals(2, verify(trail, "--timestamp-roots", roots), () -> said);
        assertTrue(said.contains("the file of one ticket carries none"), said);
        assertEquals(2, verify(trail), () -> said);
        assertFalse(said.contains("carries none"), said);
    }

    @Test
    void otherNames_areNotRead() throws IOException {
        for (String name : List.of("0.tsr", "05.tsr", "5.tsr.bak", "x.tsr")) {
            Files.createDirectories(folder.resolve("timestamps"));
            Files.writeString(folder.resolve("timestamps").resolve(name), "garbage");
        }
        assertEquals(2, verify("--timestamp-roots", roots), () -> said);
        assertEquals(3, verify("--timestamp-roots", besides.resolve("none").toString()), () -> said);
    }
}
