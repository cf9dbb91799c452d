package org.benchtrail.people;

import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.time.Clock;

/**
 * Adds lines to the record of what was done to accounts, and of what they tried without being allowed to, within the transaction
 * that does it; nothing else can be done to it.
 */
@Singleton
public class AccountLog {
    /** Who acts when no person does. */
    static final String SERVER = "(server)";

    /** What a changed name is noted as; the detail is the name of before. */
    static final String RENAMED = "name changed from";

    private final EntityManager database;
    private final Clock clock;

    AccountLog(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** @param detail what exactly, in words; never a secret */
    public void note(String who, String what, String about, String detail) {
        AccountRecord line = new AccountRecord();
        line.at = clock.instant();
        line.who = who;
        line.what = what;
        line.about = about;
        line.detail = detail;
        database.persist(line);
    }
}
