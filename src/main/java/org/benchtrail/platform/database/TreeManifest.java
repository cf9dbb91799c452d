package org.benchtrail.platform.database;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.CRC32C;
import java.util.zip.CheckedInputStream;

/**
 * What a folder holds, as text: one line for each file with its checksum and its right to execute, one for each link with its
 * target. Two folders with equal text hold the same programs; a damaged, missing, added or redirected file changes it. A checksum
 * is enough: whoever could forge a file could write the text anew too, and a digest would take a second of every start.
 */
final class TreeManifest {
    private static final String FILE_NAME = "benchtrail-manifest";

    private TreeManifest() {}

    /** @param archive checksum of where the content came from */
    static void record(Path folder, String archive) throws IOException {
        OwnerOnly.write(folder.resolve(FILE_NAME), describe(folder, archive));
    }

    /** Whether the folder holds what was recorded in it, from that archive. */
    static boolean holds(Path folder, String archive) throws IOException {
        try {
            return Files.readString(folder.resolve(FILE_NAME)).equals(describe(folder, archive));
        } catch (NoSuchFileException missing) {
            return false;
        }
    }

    /** CRC-32C (RFC 9260), eight hexadecimal digits, and the number of bytes. */
    static String checksum(InputStream content) throws IOException {
        CheckedInputStream summed = new CheckedInputStream(content, new CRC32C());
        long bytes = summed.transferTo(OutputStream.nullOutputStream());
        return String.format("%08x-%d", summed.getChecksum().getValue(), bytes);
    }

    private static String describe(Path folder, String archive) throws IOException {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
                    .filter(path -> !path.equals(folder.resolve(FILE_NAME)))
                    .sorted()
                    .map(path -> line(folder, path))
                    .collect(Collectors.joining("", "archive " + archive + "\n", ""));
        } catch (UncheckedIOException failure) {
            throw failure.getCause();
        }
    }

    private static String line(Path folder, Path path) {
        String name = folder.relativize(path).toString();
        try {
            if (Files.isSymbolicLink(path)) {
                return "link " + Files.readSymbolicLink(path) + " " + name + "\n";
            }
            try (InputStream content = Files.newInputStream(path)) {
                return (Files.isExecutable(path) ? "program " : "file ") + checksum(content) + " " + name + "\n";
            }
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}
