package org.benchtrail.operations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.configuration.Configuration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup of the running server, put into a schema beside its own, is the same in every row. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class BackupTest {
    private static final Actor BEA = new Actor("backup-bea", "Bea", Set.of(Role.TECHNICIAN));

    @Inject
    Flyway schema;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @TempDir
    Path folder;

    private Path file;
    private Configuration other;

    @BeforeEach
    void backUp() throws IOException, SQLException {
        people.ensureAccount(BEA.account(), BEA.name(), BEA.roles(), "a long enough password");
        tickets.open(
                new NewTicket(
                        "Kept",
                        "In \\N, with\ttabs",
                        Category.OTHER,
                        "W",
                        "P",
                        "R",
                        "c",
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.CAN_WAIT,
                        false),
                BEA);
        file = folder.resolve("site.backup");
        try (Connection owner = TestDatabase.owner()) {
            Backup.write(owner, schema.info().current().getVersion().getVersion(), file, line -> {});
        }
        other = Flyway.configure()
                .configuration(schema.getConfiguration())
                .schemas("restored")
                .defaultSchema("restored")
                .load()
                .getConfiguration();
    }

    @AfterEach
    void clear() {
        TestDatabase.run("drop schema if exists restored cascade");
    }

    private long restore() throws Exception {
        return new Restore(other, line -> {}).from(file);
    }

    @Test
    void restored_isTheSame_rowByRow_andGoesOnFromThere() throws Exception {
        assertEquals(PosixFilePermissions.fromString("rw-------"), Files.getPosixFilePermissions(file));
        assertTrue(restore() > 100);
        try (Connection owner = TestDatabase.owner()) {
            for (Tables.Table table : Tables.all(owner)) {
                if (table.name().equals("server_node")) {
                    continue; // the server of this test says meanwhile that it runs
                }
                assertEquals(
                        table.isKept() ? whole(owner, "public." + table.name()) : "",
                        whole(owner, "restored." + table.name()),
                        table.name());
            }
            try (Statement statement = owner.createStatement()) {
                statement.execute("set search_path to restored, public");
                SQLException kept =
                        assertThrows(SQLException.class, () -> statement.execute("delete from trail_entry"));
                assertTrue(kept.getMessage().contains("append-only"), kept.getMessage());
                statement.execute("insert into requester (name, contact) values ('after', 'c')");
            }
        }
        assertTrue(
                assertThrows(Restore.Refused.class, this::restore).getMessage().contains("in use already"));
    }

    private static String whole(Connection owner, String table) throws SQLException {
        try (Statement statement = owner.createStatement();
                ResultSet row = statement.executeQuery(
                        "select coalesce(string_agg(md5(t::text), ' ' order by t::text), '') from " + table + " t")) {
            row.next();
            return row.getString(1);
        }
    }

    private void change(String entry, String from, String to) throws IOException {
        try (FileSystem zip = FileSystems.newFileSystem(file)) {
            Path part = zip.getPath(entry);
            String text = Files.readString(part, StandardCharsets.UTF_8);
            assertFalse(text.isEmpty(), entry);
            Files.writeString(part, text.replaceFirst(from, to), StandardCharsets.UTF_8);
        }
    }

    @Test
    void backupOfANewerRelease_isRefused() throws Exception {
        change(Backup.MANIFEST, "\"schema\":\"[0-9.]+\"", "\"schema\":\"299901010000\"");
        assertTrue(
                assertThrows(Restore.Refused.class, this::restore).getMessage().contains("newer release"));
    }

    @Test
    void backupThatLacksRows_isRefused_andNothingIsRestored() throws Exception {
        change("account.copy", "(?s).*?\\n", "");
        assertTrue(
                assertThrows(Restore.Refused.class, this::restore).getMessage().contains("damaged"));
        try (Connection owner = TestDatabase.owner()) {
            assertEquals("", whole(owner, "restored.ticket"));
        }
    }

    @Test
    void whatIsNoBackup_isRefused() throws Exception {
        try (FileSystem zip = FileSystems.newFileSystem(file)) {
            Files.delete(zip.getPath(Backup.MANIFEST));
        }
        assertFalse(
                assertThrows(Restore.Refused.class, this::restore).getMessage().isEmpty());
    }
}
