package org.benchtrail.learning;

import java.util.Locale;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.ClosedCase;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.learning.TicketCase;
import org.benchtrail.core.method.TicketNumber;

/** A case that a supervisor accepted. */
record AcceptedCase(long id, TicketNumber ticket, TicketCase made, String by) {

    /**
     * As a case of the category; empty if the category no longer lists its cause. A cause that was in no list counts for the
     * entry of the same name, once there is one.
     */
    Optional<ClosedCase> in(CauseCategory category) {
        return truth(category).map(cause -> made.closedCase(String.format(Locale.ROOT, "%012d", id), by, cause));
    }

    private Optional<String> truth(CauseCategory category) {
        if (!made.cause().equals(Model.UNLISTED)) {
            return category.cause(made.cause()).map(Cause::id);
        }
        return Optional.of(category.causes().stream()
                .filter(c -> c.name().equalsIgnoreCase(made.causeWords().strip()))
                .map(Cause::id)
                .findFirst()
                .orElse(Model.UNLISTED));
    }
}
