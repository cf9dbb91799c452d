package org.benchtrail.platform.database;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;
import org.apache.commons.compress.archivers.tar.TarConstants;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tukaani.xz.LZMA2Options;
import org.tukaani.xz.XZOutputStream;

/** Archives, honest and hostile, and what is remembered of what was unpacked. */
class EmbeddedDatabaseArchiveTest {
    @TempDir
    Path temporary;

    private Path folder;

    @BeforeEach
    void createFolder() throws IOException {
        folder = Files.createDirectory(temporary.resolve("unpacked"));
    }

    @Test
    void unpack_keepsContentLinksAndTheRightToExecute() throws IOException {
        ArchiveUnpacker.unpack(honest(), folder);
        assertEquals("run", Files.readString(folder.resolve("bin/program")));
        assertEquals("rwx------", permissions("bin/program"));
        assertEquals("rw-------", permissions("lib/libx.so.1.2"));
        assertEquals("rwx------", permissions("lib"));
        assertEquals(Path.of("libx.so.1.2"), Files.readSymbolicLink(folder.resolve("lib/libx.so")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"../evil", "bin/../../evil", "/tmp/evil"})
    void entryOutside_isRefused(String name) throws IOException {
        ByteArrayInputStream archive = new Archive().file(name, 0644, "evil").end();
        assertThrows(IOException.class, () -> ArchiveUnpacker.unpack(archive, folder));
        assertFalse(Files.exists(temporary.resolve("evil")));
    }

    @ParameterizedTest
    @CsvSource({"lib/link,../../evil", "lib/link,/etc/passwd", "link,lib/../.."})
    void linkThatClimbs_isRefused(String name, String target) throws IOException {
        ByteArrayInputStream archive = new Archive().link(name, target).end();
        assertThrows(IOException.class, () -> ArchiveUnpacker.unpack(archive, folder));
    }

    @Test
    void entryThroughALink_isRefused() throws IOException {
        ByteArrayInputStream archive = new Archive()
                .file("real/inside", 0644, "x")
                .link("alias", "real")
                .file("alias/evil", 0644, "evil")
                .end();
        assertThrows(IOException.class, () -> ArchiveUnpacker.unpack(archive, folder));
        assertFalse(Files.exists(folder.resolve("real/evil")));
    }

    @Test
    void entryInPlaceOfALink_isRefused() throws IOException {
        Path outside = Files.writeString(temporary.resolve("outside"), "untouched");
        Files.createSymbolicLink(folder.resolve("planted"), outside);
        ByteArrayInputStream archive =
                new Archive().file("planted", 0644, "evil").end();
        assertThrows(IOException.class, () -> ArchiveUnpacker.unpack(archive, folder));
        assertEquals("untouched", Files.readString(outside));
    }

    @Test
    void truncatedArchive_fails() throws IOException {
        byte[] whole = honest().readAllBytes();
        ByteArrayInputStream half = new ByteArrayInputStream(Arrays.copyOf(whole, whole.length / 2));
        assertThrows(IOException.class, () -> ArchiveUnpacker.unpack(half, folder));
    }

    @Test
    void checksum_matchesThePublishedVector() throws IOException {
        // RFC 3720, B.4: 32 bytes of zeroes
        assertEquals("8a9136aa-32", TreeManifest.checksum(new ByteArrayInputStream(new byte[32])));
    }

    @Test
    void manifest_holdsUntilAnythingChanges() throws IOException {
        ArchiveUnpacker.unpack(honest(), folder);
        assertFalse(TreeManifest.holds(folder, "a"), "nothing recorded yet");
        TreeManifest.record(folder, "a");
        assertTrue(TreeManifest.holds(folder, "a"));
        assertFalse(TreeManifest.holds(folder, "b"), "another archive");

        Path program = folder.resolve("bin/program");
        Files.writeString(program, "ruN");
        assertFalse(TreeManifest.holds(folder, "a"), "same length, other content");
        Files.writeString(program, "run");
        assertTrue(TreeManifest.holds(folder, "a"));

        Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rw-------"));
        assertFalse(TreeManifest.holds(folder, "a"), "no longer executable");
        Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));

        Path added = Files.writeString(folder.resolve("lib/added.so"), "x");
        assertFalse(TreeManifest.holds(folder, "a"), "a file more");
        Files.delete(added);

        Path link = folder.resolve("lib/libx.so");
        Files.delete(link);
        assertFalse(TreeManifest.holds(folder, "a"), "a link less");
        Files.createSymbolicLink(link, Path.of("../bin/program"));
        assertFalse(TreeManifest.holds(folder, "a"), "a link redirected");
    }

    private String permissions(String name) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(name)));
    }

    private static ByteArrayInputStream honest() throws IOException {
        return new Archive()
                .file("./bin/program", 0755, "run")
                .file("lib/libx.so.1.2", 0644, "library")
                .link("lib/libx.so", "libx.so.1.2")
                .end();
    }

    /** Writes an archive entry by entry, as a hostile packer could. */
    private static final class Archive {
        private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        private final TarArchiveOutputStream tar;

        Archive() throws IOException {
            tar = new TarArchiveOutputStream(new XZOutputStream(bytes, new LZMA2Options(0)));
        }

        Archive file(String name, int mode, String content) throws IOException {
            byte[] data = content.getBytes(StandardCharsets.UTF_8);
            TarArchiveEntry entry = new TarArchiveEntry(name, true);
            entry.setMode(mode);
            entry.setSize(data.length);
            tar.putArchiveEntry(entry);
            tar.write(data);
            tar.closeArchiveEntry();
            return this;
        }

        Archive link(String name, String target) throws IOException {
            TarArchiveEntry entry = new TarArchiveEntry(name, TarConstants.LF_SYMLINK);
            entry.setLinkName(target);
            tar.putArchiveEntry(entry);
            tar.closeArchiveEntry();
            return this;
        }

        ByteArrayInputStream end() throws IOException {
            tar.close();
            return new ByteArrayInputStream(bytes.toByteArray());
        }
    }
}
