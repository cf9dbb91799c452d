package org.benchtrail.platform.database;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Properties;

/** The three roles with their passwords, kept in a file that only the owner can read. */
record RolePasswords(Credentials superuser, Credentials owner, Credentials server) {
    private static final String SUPERUSER = "postgres";
    private static final int RANDOM_BYTES = 32;

    /** Reads the file; makes it with fresh random passwords if there is no database yet. */
    static RolePasswords of(DataFolder folder) throws IOException {
        if (Files.exists(folder.passwordFile())) {
            return read(folder.passwordFile());
        }
        if (folder.hasCluster()) {
            throw new DatabaseNotStarted("The file " + folder.passwordFile()
                    + " is missing, and without it nobody can sign in to the database beside it."
                    + " Restore the file from a backup, or choose another data folder.");
        }
        SecureRandom random = new SecureRandom();
        RolePasswords fresh = new RolePasswords(
                fresh(SUPERUSER, random),
                fresh(EmbeddedDatabase.OWNER, random),
                fresh(EmbeddedDatabase.SERVER, random));
        OwnerOnly.write(folder.passwordFile(), fresh.text());
        return fresh;
    }

    @Override
    public String toString() {
        return "RolePasswords[]";
    }

    private static RolePasswords read(Path file) throws IOException {
        Properties lines = new Properties();
        lines.load(new StringReader(Files.readString(file)));
        return new RolePasswords(
                read(SUPERUSER, lines, file),
                read(EmbeddedDatabase.OWNER, lines, file),
                read(EmbeddedDatabase.SERVER, lines, file));
    }

    private static Credentials read(String role, Properties lines, Path file) {
        String password = lines.getProperty(role);
        if (password == null || password.isBlank()) {
            throw new DatabaseNotStarted("The file " + file + " has no password for the role " + role
                    + ". Restore the file from a backup, or choose another data folder.");
        }
        return new Credentials(role, password);
    }

    private static Credentials fresh(String role, SecureRandom random) {
        byte[] bytes = new byte[RANDOM_BYTES];
        random.nextBytes(bytes);
        return new Credentials(role, Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    }

    private String text() {
        return line(superuser) + line(owner) + line(server);
    }

    private static String line(Credentials role) {
        return role.user() + "=" + role.password() + "\n";
    }
}
