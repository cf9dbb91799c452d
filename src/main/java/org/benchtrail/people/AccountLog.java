package org.benchtrail.people;

import jakarta.inject.Singleton;
import java.time.Clock;

/** Adds lines to the record of what was done to accounts, within the transaction that does it. */
@Singleton
class AccountLog {
    /** Who acts when no person does. */
    static final String SERVER = "(server)";

    private final Accounts accounts;
    private final Clock clock;

    AccountLog(Accounts accounts, Clock clock) {
        this.accounts = accounts;
        this.clock = clock;
    }

    /** @param detail what exactly, in words; never a secret */
    void note(String who, String what, String about, String detail) {
        AccountRecord line = new AccountRecord();
        line.at = clock.instant();
        line.who = who;
        line.what = what;
        line.about = about;
        line.detail = detail;
        accounts.append(line);
    }
}
