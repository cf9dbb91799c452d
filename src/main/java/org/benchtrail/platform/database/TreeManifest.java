package org.benchtrail.platform.database;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a folder holds, as text: one line for each file with its SHA-256 and its right to execute, one for each link with its
 * target. Two folders with equal text hold the same programs; a changed, missing, added or redirected file changes it.
 */
final class TreeManifest {
    private static final String FILE_NAME = "benchtrail-manifest";
    private static final int BUFFER = 1 << 16;

    private TreeManifest() {}

    /** @param archiveHash where the content came from, hexadecimal */
    static void record(Path folder, String archiveHash) throws IOException {
        OwnerOnly.write(folder.resolve(FILE_NAME), describe(folder, archiveHash));
    }

    /** Whether the folder holds what was recorded in it, from that archive. */
    static boolean holds(Path folder, String archiveHash) throws IOException {
        try {
            return Files.readString(folder.resolve(FILE_NAME)).equals(describe(folder, archiveHash));
        } catch (NoSuchFileException missing) {
            return false;
        }
    }

    static String sha256(InputStream content) throws IOException {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] buffer = new byte[BUFFER];
            for (int read = content.read(buffer); read >= 0; read = content.read(buffer)) {
                digest.update(buffer, 0, read);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    private static String describe(Path folder, String archiveHash) throws IOException {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
                    .filter(path -> !path.equals(folder.resolve(FILE_NAME)))
                    .sorted()
                    .map(path -> line(folder, path))
                    .collect(Collectors.joining("", "archive " + archiveHash + "\n", ""));
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
                return (Files.isExecutable(path) ? "program " : "file ") + sha256(content) + " " + name + "\n";
            }
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}
