package org.benchtrail.operations;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.configuration.Configuration;
import org.postgresql.PGConnection;

/**
 * Puts a backup into a database that holds nothing yet: makes the schema that the backup is of, fills it all or none, and then brings
 * the schema up to date. So a backup of an older release, or of another version of PostgreSQL, is restored by the same command.
 */
final class Restore {
    private final Configuration database;
    private final Consumer<String> progress;

    /** @param database to be restored into, with the account of the owner */
    Restore(Configuration database, Consumer<String> progress) {
        this.database = database;
        this.progress = progress;
    }

    /** Why a backup is not restored, a sentence. */
    static final class Refused extends Exception {
        private static final long serialVersionUID = 1L;

        Refused(String sentence) {
            super(sentence);
        }
    }

    /** @return how many rows were restored */
    long from(Path file) throws IOException, SQLException, Refused {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            Backup.Manifest manifest = manifest(zip);
            requireKnown(manifest);
            requireEmpty();
            at(Optional.empty()).clean();
            at(Optional.of(manifest.schema())).migrate();
            progress.accept("schema: " + manifest.schema());
            try (Connection connection = database.getDataSource().getConnection()) {
                use(connection);
                fill(connection, zip, manifest);
            }
            at(Optional.empty()).migrate();
            return manifest.tables().stream().mapToLong(Backup.Kept::rows).sum();
        }
    }

    private Flyway at(Optional<String> version) {
        var schema = Flyway.configure(database.getClassLoader())
                .configuration(database)
                .cleanDisabled(false);
        version.ifPresent(v -> schema.target(MigrationVersion.fromVersion(v)));
        return schema.load();
    }

    private static Backup.Manifest manifest(ZipFile zip) throws IOException, Refused {
        ZipEntry entry = zip.getEntry(Backup.MANIFEST);
        if (entry == null) {
            throw new Refused("This is no backup of Benchtrail: it has no " + Backup.MANIFEST + ".");
        }
        try (InputStream in = zip.getInputStream(entry)) {
            return Backup.JSON.readValue(in, Backup.Manifest.class);
        }
    }

    private void requireKnown(Backup.Manifest manifest) throws Refused {
        boolean isKnown = manifest.format() == Backup.FORMAT
                && java.util.Arrays.stream(at(Optional.empty()).info().all())
                        .anyMatch(one -> one.getVersion() != null
                                && !one.getState().isFailed()
                                && one.getPhysicalLocation() != null
                                && one.getVersion().getVersion().equals(manifest.schema()));
        if (!isKnown) {
            throw new Refused("The backup was made by a newer release than this one (schema " + manifest.schema()
                    + "): restore it with that release.");
        }
    }

    /** Nothing that somebody did is thrown away. */
    private void requireEmpty() throws SQLException, Refused {
        try (Connection connection = database.getDataSource().getConnection();
                Statement statement = connection.createStatement()) {
            if (!found(statement, "to_regclass('" + schema() + ".ticket') is null")
                    && found(
                            statement,
                            "exists (select from " + schema() + ".ticket) or (select count(*) > 1 from " + schema()
                                    + ".account)")) {
                throw new Refused("The database is in use already: restore into one that is new.");
            }
        }
    }

    private static boolean found(Statement statement, String condition) throws SQLException {
        try (ResultSet row = statement.executeQuery("select " + condition)) {
            return row.next() && row.getBoolean(1);
        }
    }

    private String schema() {
        String schema = database.getDefaultSchema();
        return schema == null ? "public" : schema;
    }

    private void use(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("set search_path to " + schema() + ", public");
        }
    }

    /** Triggers say what happens now, and nothing does: what they would write is in the backup. */
    private void fill(Connection connection, ZipFile zip, Backup.Manifest manifest)
            throws IOException, SQLException, Refused {
        connection.setAutoCommit(false);
        List<Tables.Table> tables = Tables.all(connection);
        try (Statement statement = connection.createStatement()) {
            for (Tables.Table table : tables) {
                statement.execute("alter table " + table.name() + " disable trigger user");
            }
            statement.execute(
                    "truncate " + tables.stream().map(Tables.Table::name).collect(Collectors.joining(", ")));
            for (Tables.Table table : tables) {
                copy(connection, zip, manifest, table);
            }
            for (Tables.Table table : Tables.numbered(connection)) {
                statement.execute("select setval(pg_get_serial_sequence('" + table.name() + "', '" + table.columns()
                        + "'), coalesce(max(" + table.columns() + "), 0) + 1, false) from " + table.name());
            }
            for (Tables.Table table : tables) {
                statement.execute("alter table " + table.name() + " enable trigger user");
            }
        }
        connection.commit();
    }

    private void copy(Connection connection, ZipFile zip, Backup.Manifest manifest, Tables.Table table)
            throws IOException, SQLException, Refused {
        Optional<Backup.Kept> kept = manifest.tables().stream()
                .filter(k -> k.table().equals(table.name()))
                .findFirst();
        if (kept.isEmpty()) {
            return;
        }
        ZipEntry entry = zip.getEntry(table.name() + ".copy");
        if (entry == null) {
            throw new Refused("The backup lacks its part " + table.name() + ".");
        }
        try (InputStream rows = zip.getInputStream(entry)) {
            long copied = connection
                    .unwrap(PGConnection.class)
                    .getCopyAPI()
                    .copyIn("copy " + table.name() + " (" + kept.get().columns() + ") from stdin", rows);
            if (copied != kept.get().rows()) {
                throw new Refused("The backup is damaged: " + table.name() + " has " + copied + " rows of "
                        + kept.get().rows() + ".");
            }
            if (copied > 0) {
                progress.accept(table.name() + ": " + copied);
            }
        }
    }
}
