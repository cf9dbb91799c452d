package org.benchtrail.platform.database;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.UserPrincipal;
import java.util.Objects;

/**
 * The folder that holds the database and everything that belongs to it.
 *
 * <pre>
 * benchtrail.lock             held while a Benchtrail uses the folder; says its process id
 * database.passwords          the three passwords, readable by the owner only
 * postgres-17.5-&lt;hash&gt;/       the PostgreSQL programs, unpacked from the archive of that hash
 * cluster/                    the data
 * postgres.log                what PostgreSQL says
 * *.partial-*                 work that was not finished; swept away at the next start
 * </pre>
 */
final class DataFolder {
    static final String PARTIAL = ".partial-";
    private static final long NEEDED_MEGABYTES = 400;

    private final Path path;

    private DataFolder(Path path) {
        this.path = path;
    }

    /**
     * The folder, made if missing. Nothing in it is changed yet.
     *
     * @throws DatabaseNotStarted if it holds data of another kind or version, if others may write in it, or if its name
     *     cannot be passed on to PostgreSQL
     */
    static DataFolder open(Path wanted) throws IOException {
        Path absolute = wanted.toAbsolutePath().normalize();
        requirePlainName(absolute);
        if (!Files.exists(absolute)) {
            OwnerOnly.createFolder(absolute);
        }
        DataFolder folder = new DataFolder(absolute.toRealPath());
        requirePlainName(folder.path);
        folder.requireOurKind();
        folder.requireOnlyOwnerWrites();
        return folder;
    }

    Path path() {
        return path;
    }

    Path lockFile() {
        return path.resolve("benchtrail.lock");
    }

    Path passwordFile() {
        return path.resolve("database.passwords");
    }

    Path cluster() {
        return path.resolve("cluster");
    }

    Path postmasterPid() {
        return cluster().resolve("postmaster.pid");
    }

    Path log() {
        return path.resolve("postgres.log");
    }

    Path toolOutput() {
        return path.resolve("postgres-tool.log");
    }

    boolean hasCluster() {
        return Files.exists(cluster());
    }

    /** Deletes what an interrupted start left half done. The lock must be held. */
    void sweep() throws IOException {
        try (DirectoryStream<Path> leftovers = Files.newDirectoryStream(path, "*" + PARTIAL + "*")) {
            for (Path leftover : leftovers) {
                sweep(leftover);
            }
        }
    }

    private static void sweep(Path leftover) {
        try {
            OwnerOnly.deleteTree(leftover);
        } catch (IOException stillWrittenTo) {
            // An initdb that outlived its Benchtrail may be at work in it. Nobody will use it; the next start sweeps
            // again.
        }
    }

    /** @throws DatabaseNotStarted if the disk is too full to unpack and create a database */
    void requireSpace(String purpose) throws IOException {
        requireSpace(purpose, Files.getFileStore(path).getUsableSpace() >> 20);
    }

    void requireSpace(String purpose, long freeMegabytes) {
        if (freeMegabytes < NEEDED_MEGABYTES) {
            throw new DatabaseNotStarted("The disk that holds " + path + " has " + freeMegabytes + " MB left; "
                    + purpose + " needs " + NEEDED_MEGABYTES + " MB. Free some space or choose another data folder.");
        }
    }

    /**
     * PostgreSQL refuses data of another account, with a message that does not say what to do.
     *
     * @param ours a file just made by this process
     */
    void requireSameOwner(Path ours) throws IOException {
        if (!hasCluster()) {
            return;
        }
        UserPrincipal holder = Files.getOwner(cluster());
        if (OwnerOnly.posix(path) && !holder.equals(Files.getOwner(ours))) {
            throw new DatabaseNotStarted("The database in " + path + " belongs to the account " + holder.getName()
                    + ". Start Benchtrail as that account, or choose another data folder.");
        }
    }

    private void requireOurKind() throws IOException {
        if (Files.exists(path.resolve("PG_VERSION"))) {
            throw new DatabaseNotStarted("The folder " + path + " is itself the data directory of a PostgreSQL server."
                    + " Nothing in it was changed. Choose another data folder for Benchtrail.");
        }
        if (!hasCluster()) {
            return;
        }
        String version = clusterVersion();
        if (!version.equals(PostgresBinaries.MAJOR)) {
            throw new DatabaseNotStarted("The folder " + path + " holds a database of PostgreSQL " + version
                    + "; this Benchtrail brings PostgreSQL " + PostgresBinaries.MAJOR + ". Nothing in it was changed."
                    + " Start the Benchtrail that made it and export the data there, or choose another data folder.");
        }
    }

    private String clusterVersion() throws IOException {
        try {
            return Files.readString(cluster().resolve("PG_VERSION")).strip();
        } catch (NoSuchFileException missing) {
            throw new DatabaseNotStarted(
                    "The folder " + cluster() + " is not a PostgreSQL database: its file PG_VERSION is missing."
                            + " Nothing in it was changed. Restore it from a backup, or choose another data folder.",
                    missing);
        }
    }

    /**
     * Whoever may write in the folder may swap the programs for others. An empty folder is made owner-only; one that holds
     * something already keeps its rights, for others may have to read there.
     */
    private void requireOnlyOwnerWrites() throws IOException {
        if (isEmpty()) {
            OwnerOnly.restrict(path);
        } else if (OwnerOnly.writableByOthers(path)) {
            throw new DatabaseNotStarted("Other accounts may write in the folder " + path
                    + ". Take that right away (chmod go-w), or choose an empty folder for Benchtrail.");
        }
    }

    private boolean isEmpty() throws IOException {
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(path)) {
            return !entries.iterator().hasNext();
        }
    }

    /** initdb and pg_ctl hand paths to a shell between double quotes, where these characters would not stand for themselves. */
    private static void requirePlainName(Path path) {
        boolean windows = Objects.equals(path.getFileSystem().getSeparator(), "\\");
        String special = windows ? "\"%\r\n" : "\"$`\\!\r\n";
        if (path.toString().chars().anyMatch(c -> special.indexOf(c) >= 0)) {
            throw new DatabaseNotStarted("The path of the data folder, " + path + ", has a character that PostgreSQL's"
                    + " programs cannot take (quotation mark, $, `, backslash, !, % or a line break)."
                    + " Choose another data folder.");
        }
    }
}
