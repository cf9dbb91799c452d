package org.benchtrail.platform.database;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

/** Makes the PostgreSQL data directory. */
final class Cluster {
    private static final Duration CREATION_LIMIT = Duration.ofMinutes(10);

    private Cluster() {}

    /**
     * Creates the data directory under a passing name and renames it when complete: one that exists under its own name is
     * whole. Passwords are asked for on every connection, pages carry checksums, text is UTF-8 and sorts the same on every
     * machine.
     */
    static void create(DataFolder folder, PostgresTools tools, Credentials superuser, Progress progress)
            throws IOException {
        progress.tell("Creating the database in " + folder.cluster() + " ...");
        folder.requireSpace("creating the database");
        Path partial = OwnerOnly.createFreshFolder(folder.path(), "cluster" + DataFolder.PARTIAL);
        Path secrets = OwnerOnly.createFreshFolder(folder.path(), "password" + DataFolder.PARTIAL);
        Path password = secrets.resolve("password");
        PostgresTools.Outcome outcome;
        try {
            OwnerOnly.write(password, superuser.password() + "\n");
            outcome = tools.run(
                    "Creating the database",
                    CREATION_LIMIT,
                    progress,
                    List.of(
                            "initdb",
                            "--pgdata=" + partial,
                            "--username=" + superuser.user(),
                            "--pwfile=" + password,
                            "--auth-local=scram-sha-256",
                            "--auth-host=scram-sha-256",
                            "--data-checksums",
                            "--encoding=UTF8",
                            "--locale=C",
                            "--locale-provider=builtin",
                            "--builtin-locale=C.UTF-8",
                            "--no-instructions"));
        } finally {
            OwnerOnly.deleteTree(secrets);
        }
        if (!outcome.succeeded()) {
            throw new DatabaseNotStarted(
                    "PostgreSQL could not create the database in " + folder.path() + ". It said:\n" + outcome.said());
        }
        OwnerOnly.moveDurably(partial, folder.cluster());
    }
}
