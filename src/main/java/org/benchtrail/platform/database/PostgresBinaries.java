package org.benchtrail.platform.database;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The PostgreSQL programs, unpacked beside the data.
 *
 * <p>Every start sums up the archive that Benchtrail brings (which names the folder, so that another archive never meets old
 * programs) and every unpacked file (about 60 MB, a tenth of a second), and unpacks anew when anything differs. That finds
 * damage, a half copy and a swapped file. It is no defence against somebody who works as the owner of the folder: they could
 * rewrite the manifest too, or Benchtrail itself. Against everybody else stands the owner-only folder.
 */
final class PostgresBinaries {
    /** The version of the archive that the build brings; a test compares it with what the server says. */
    static final String VERSION = "17.5";

    static final String MAJOR = "17";

    private final Path folder;

    private PostgresBinaries(Path folder) {
        this.folder = folder;
    }

    /**
     * Programs that are known to be those of the archive.
     *
     * @throws DatabaseNotStarted if Benchtrail was built without the archive for this kind of machine
     */
    static PostgresBinaries of(DataFolder dataFolder, Progress progress) throws IOException {
        String sum;
        try (InputStream archive = archive()) {
            sum = TreeManifest.checksum(archive);
        }
        Path folder = dataFolder.path().resolve("postgres-" + VERSION + "-" + sum);
        if (Files.exists(folder) && !TreeManifest.holds(folder, sum)) {
            progress.tell(
                    "The PostgreSQL programs in " + folder + " are not as they were unpacked; unpacking them anew.");
            Files.move(
                    folder,
                    OwnerOnly.createFreshFolder(dataFolder.path(), "altered" + DataFolder.PARTIAL)
                            .resolve("programs"));
        }
        if (!Files.exists(folder)) {
            unpack(dataFolder, folder, sum, progress);
        }
        dataFolder.sweep();
        return new PostgresBinaries(folder);
    }

    /** @param name initdb, pg_ctl or postgres */
    Path program(String name) {
        Path plain = folder.resolve("bin").resolve(name);
        return Files.exists(plain) ? plain : plain.resolveSibling(name + ".exe");
    }

    private static void unpack(DataFolder dataFolder, Path folder, String sum, Progress progress) throws IOException {
        progress.tell("Unpacking PostgreSQL " + VERSION + " into " + folder + " ...");
        dataFolder.requireSpace("unpacking PostgreSQL and creating the database");
        Path partial = OwnerOnly.createFreshFolder(dataFolder.path(), "postgres" + DataFolder.PARTIAL);
        try (InputStream archive = archive()) {
            ArchiveUnpacker.unpack(archive, partial);
        }
        TreeManifest.record(partial, sum);
        OwnerOnly.moveDurably(partial, folder);
    }

    private static InputStream archive() {
        String name = archiveName(System.getProperty("os.name"), System.getProperty("os.arch"));
        @Nullable InputStream found = PostgresBinaries.class.getClassLoader().getResourceAsStream(name);
        if (found == null) {
            throw new DatabaseNotStarted(
                    "This Benchtrail was built without PostgreSQL for this kind of machine (" + name
                            + " is missing). Build it on a machine of this kind, or give it the address of a PostgreSQL server.");
        }
        return new BufferedInputStream(found);
    }

    static String archiveName(String osName, String osArch) {
        String os = osName.toLowerCase(Locale.ROOT);
        String system = os.startsWith("windows") ? "windows" : os.startsWith("mac") ? "darwin" : "linux";
        String machine = switch (osArch) {
            case "amd64", "x86_64" -> "x86_64";
            case "aarch64", "arm64" -> "arm_64";
            default -> osArch;
        };
        return "postgres-" + system + "-" + machine + ".txz";
    }
}
