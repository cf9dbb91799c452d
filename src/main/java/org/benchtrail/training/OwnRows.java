package org.benchtrail.training;

import jakarta.persistence.EntityManager;
import java.util.function.Function;
import org.benchtrail.platform.sql.OwnAccount;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/**
 * Tables that hold what is one person's own: their account is taken on for each statement, which says first whose rows it is about; the
 * database shows it no others.
 *
 * @param setting what the policies of the tables ask
 */
record OwnRows(EntityManager database, SqlText text, String setting) {
    <T> T of(String person, String statement, Function<Sql, T> sent) {
        return OwnAccount.PRIVATE.during(
                database,
                setting,
                person,
                () -> sent.apply(Sql.of(database, text.statement(statement)).with("person", person)));
    }
}
