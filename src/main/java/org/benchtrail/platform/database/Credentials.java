package org.benchtrail.platform.database;

/** A database role and its password. Never printed: {@link #toString()} names the role only. */
public record Credentials(String user, String password) {
    @Override
    public String toString() {
        return "Credentials[" + user + "]";
    }
}
