package org.benchtrail.platform.database;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Folders that are refused, each with a sentence that says what to do, and left as they were. */
class EmbeddedDatabaseRefusalTest {
    @TempDir
    Path temporary;

    @Test
    void otherMajorVersion_isRefusedAndUntouched() throws IOException {
        Path folder = temporary.resolve("old");
        Files.createDirectories(folder.resolve("cluster"));
        Files.writeString(folder.resolve("cluster/PG_VERSION"), "16\n");
        List<String> before = contents(folder);
        String sentence = refusal(folder);
        assertTrue(sentence.contains("PostgreSQL 16") && sentence.contains("PostgreSQL 17"), sentence);
        assertEquals(before, contents(folder));
    }

    @Test
    void dataDirectoryOfAnotherServer_isRefusedAndUntouched() throws IOException {
        Files.writeString(temporary.resolve("PG_VERSION"), "17\n");
        List<String> before = contents(temporary);
        String sentence = refusal(temporary);
        assertTrue(sentence.contains("itself the data directory"), sentence);
        assertEquals(before, contents(temporary));
    }

    @Test
    void clusterWithoutVersion_isRefusedAndUntouched() throws IOException {
        Files.createDirectories(temporary.resolve("cluster/base"));
        List<String> before = contents(temporary);
        String sentence = refusal(temporary);
        assertTrue(sentence.contains("PG_VERSION is missing"), sentence);
        assertEquals(before, contents(temporary));
    }

    @ParameterizedTest
    @ValueSource(strings = {"$HOME", "a`id`b", "say \"hi\"", "back\\slash", "line\nbreak"})
    void pathThatAShellWouldRead_isRefused(String name) {
        Path folder = temporary.resolve(name);
        String sentence = refusal(folder);
        assertTrue(sentence.contains("another data folder"), sentence);
        assertFalse(Files.exists(folder));
    }

    @Test
    void folderWithFilesWhereOthersMayWrite_isRefused() throws IOException {
        Files.writeString(temporary.resolve("notes.txt"), "somebody else's");
        Files.setPosixFilePermissions(temporary, PosixFilePermissions.fromString("rwxrwxrwx"));
        String sentence = refusal(temporary);
        assertTrue(sentence.contains("Other accounts may write"), sentence);
        assertEquals(List.of("notes.txt somebody else's"), contents(temporary));
    }

    @Test
    void emptyFolder_becomesOwnerOnly_usedOneKeepsItsRights() throws IOException {
        Files.setPosixFilePermissions(temporary, PosixFilePermissions.fromString("rwxrwxrwx"));
        DataFolder.open(temporary);
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(temporary)));
        Files.writeString(temporary.resolve("notes.txt"), "mine");
        Files.setPosixFilePermissions(temporary, PosixFilePermissions.fromString("rwxr-xr-x"));
        DataFolder.open(temporary);
        assertEquals("rwxr-xr-x", PosixFilePermissions.toString(Files.getPosixFilePermissions(temporary)));
    }

    @Test
    void folderBelowAFile_isRefused() throws IOException {
        Path file = Files.writeString(temporary.resolve("file"), "x");
        String sentence = refusal(file.resolve("data"));
        assertTrue(sentence.contains("cannot be used"), sentence);
    }

    @Test
    void fullDisk_isTold() throws IOException {
        DataFolder folder = DataFolder.open(temporary);
        DatabaseNotStarted refusal =
                assertThrows(DatabaseNotStarted.class, () -> folder.requireSpace("creating the database", 399));
        assertTrue(refusal.getMessage().contains("399 MB left"), refusal.getMessage());
        folder.requireSpace("creating the database", 400);
    }

    @Test
    void otherOwner_isTold() throws IOException {
        Files.createDirectories(temporary.resolve("cluster"));
        Files.writeString(temporary.resolve("cluster/PG_VERSION"), PostgresBinaries.MAJOR + "\n");
        DataFolder folder = DataFolder.open(temporary);
        Path ofAnother = Path.of("/proc/1/stat");
        Path ours = OwnerOnly.createEmpty(folder.toolOutput());
        folder.requireSameOwner(ours);
        if (!Files.getOwner(ofAnother).equals(Files.getOwner(ours))) {
            assertThrows(DatabaseNotStarted.class, () -> folder.requireSameOwner(ofAnother));
        }
    }

    @Test
    void archive_isNamedForSystemAndMachine() {
        assertEquals("postgres-linux-x86_64.txz", PostgresBinaries.archiveName("Linux", "amd64"));
        assertEquals("postgres-linux-arm_64.txz", PostgresBinaries.archiveName("Linux", "aarch64"));
        assertEquals("postgres-darwin-arm_64.txz", PostgresBinaries.archiveName("Mac OS X", "aarch64"));
        assertEquals("postgres-windows-x86_64.txz", PostgresBinaries.archiveName("Windows 11", "amd64"));
    }

    private static String refusal(Path folder) {
        return assertThrows(DatabaseNotStarted.class, () -> EmbeddedDatabase.start(folder, sentence -> {}))
                .getMessage();
    }

    private static List<String> contents(Path folder) throws IOException {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(path -> !path.equals(folder))
                    .sorted()
                    .map(path -> folder.relativize(path) + " " + (Files.isDirectory(path) ? "folder" : text(path)))
                    .toList();
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException failure) {
            throw new IllegalStateException(failure);
        }
    }
}
