package org.benchtrail.operations;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.postgresql.PGConnection;

/**
 * A backup: a zip file of all tables as they were at one moment, each in PostgreSQL's text form (COPY), which every later version of
 * PostgreSQL reads; and beside them {@code manifest.json}, which says of which schema they are and how many rows each has. Files
 * attached to tickets are in it; the key of the log is not: it is kept apart from the database, and so from its backups.
 */
final class Backup {
    static final int FORMAT = 1;
    static final String MANIFEST = "manifest.json";
    static final ObjectMapper JSON = new ObjectMapper();

    private Backup() {}

    /**
     * What a backup says of itself.
     *
     * @param format of the backup
     * @param schema version of the last migration
     */
    record Manifest(int format, String schema, List<Kept> tables) {}

    record Kept(String table, String columns, long rows) {}

    /**
     * Writes the file as a whole, or leaves none; readable for its owner only.
     *
     * @param database as the owner of the tables; acts meanwhile do not wait for it, and are not in it
     * @param schema version of its last migration
     * @return how many rows there are in it
     */
    static long write(Connection database, String schema, Path file, Consumer<String> progress)
            throws IOException, SQLException {
        Path partial = Files.createTempFile(
                file.toAbsolutePath().getParent(),
                ".backup",
                ".partial",
                PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        try {
            database.setAutoCommit(false);
            try (Statement begin = database.createStatement()) {
                begin.execute("set transaction isolation level repeatable read, read only");
            }
            Manifest manifest;
            try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(partial))) {
                manifest = new Manifest(FORMAT, schema, tables(database, zip, progress));
                zip.putNextEntry(new ZipEntry(MANIFEST));
                zip.write(JSON.writeValueAsBytes(manifest));
                zip.closeEntry();
            }
            Files.move(partial, file, StandardCopyOption.ATOMIC_MOVE);
            return manifest.tables().stream().mapToLong(Kept::rows).sum();
        } finally {
            database.rollback();
            Files.deleteIfExists(partial);
        }
    }

    private static List<Kept> tables(Connection database, ZipOutputStream zip, Consumer<String> progress)
            throws IOException, SQLException {
        List<Kept> kept = new ArrayList<>();
        for (Tables.Table table : Tables.all(database)) {
            if (table.isKept()) {
                zip.putNextEntry(new ZipEntry(table.name() + ".copy"));
                long rows = database.unwrap(PGConnection.class)
                        .getCopyAPI()
                        .copyOut("copy " + table.name() + " (" + table.columns() + ") to stdout", new Open(zip));
                zip.closeEntry();
                kept.add(new Kept(table.name(), table.columns(), rows));
                if (rows > 0) {
                    progress.accept(table.name() + ": " + rows);
                }
            }
        }
        return kept;
    }

    /** Stays open when a table is through. */
    private static final class Open extends FilterOutputStream {
        Open(OutputStream zip) {
            super(zip);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            out.write(bytes, from, length);
        }

        @Override
        public void close() {
            // the next table follows
        }
    }
}
