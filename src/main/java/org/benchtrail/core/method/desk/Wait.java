package org.benchtrail.core.method.desk;

import java.time.Instant;
import org.benchtrail.core.method.Stamp;
import org.jspecify.annotations.Nullable;

/**
 * Something on a ticket that waits for one account, or for anybody of a role who has had no hand in the work.
 *
 * @param entry number of the entry that made it wait
 * @param account for whom; null if for a role
 * @param supervisors whether any supervisor may decide it
 * @param mentors whether any mentor may decide it
 * @param asker account that made it wait
 * @param since when it was made to wait
 * @param due from when on it waits: later than {@code since} for what ends by the clock
 */
public record Wait(
        WaitKind kind,
        int entry,
        @Nullable String account,
        boolean supervisors,
        boolean mentors,
        String asker,
        Instant since,
        Instant due) {

    static Wait ofRoles(WaitKind kind, Stamp made, boolean supervisors, boolean mentors) {
        return new Wait(kind, made.entry(), null, supervisors, mentors, made.person(), made.at(), made.at());
    }

    static Wait of(WaitKind kind, Stamp made, String account, Instant due) {
        return new Wait(kind, made.entry(), account, false, false, made.person(), made.at(), due);
    }
}
