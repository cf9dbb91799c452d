package org.benchtrail.platform.sql;

import jakarta.persistence.EntityManager;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * An account of the database that the server's ordinary one takes on for some statements of the running transaction, and has no right
 * of otherwise. So what it keeps is neither read nor written by a statement that forgot where it is, and its own statements reach
 * nothing else. Its name is that of the server's account with an ending.
 */
public enum OwnAccount {
    /** What is one person's own: what they forecast, answered to the questions of a shift, chose to be shown. */
    PRIVATE,
    /** Practice jobs, with what is true of their devices. */
    PRACTICE;

    /** What it was before, and then what it becomes: until the transaction ends, or it is laid down. */
    private static final String TAKEN =
            "current_setting('role') as before, set_config('role', session_user || :ending, true) as taken";

    public String beside(String server) {
        return server + ending();
    }

    private String ending() {
        return "_" + name().toLowerCase(Locale.ROOT);
    }

    /** One within another is well; what fails ends the transaction, and the account with it. */
    public <T> T during(EntityManager database, Supplier<T> statements) {
        return during(Sql.of(database, "select " + TAKEN), database, statements);
    }

    /** The same, about the rows of that person: {@code setting} is what the policies of the tables ask. */
    public <T> T during(EntityManager database, String setting, String person, Supplier<T> statements) {
        Sql taken = Sql.of(database, "select " + TAKEN + ", set_config(:setting, :person, true) as person")
                .with("setting", setting)
                .with("person", person);
        return during(taken, database, statements);
    }

    private <T> T during(Sql taken, EntityManager database, Supplier<T> statements) {
        String before = taken.with("ending", ending()).value(String.class);
        T answer = statements.get();
        Sql.of(database, "select set_config('role', :before, true)")
                .with("before", before)
                .value(String.class);
        return answer;
    }
}
