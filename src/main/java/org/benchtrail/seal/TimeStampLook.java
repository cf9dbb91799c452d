package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.seal.timestamp.TimeStamp;
import org.benchtrail.seal.timestamp.TimeStampAnswer;
import org.benchtrail.seal.timestamp.TimeStampRefused;
import org.benchtrail.seal.timestamp.TimeStampRequest;

/**
 * Whether each time-stamp that is kept is still one of its head. Who is trusted is not asked: that is for whoever verifies an export,
 * and a root that the settings name no longer does not make an old answer another one.
 */
@ApplicationScoped
class TimeStampLook {
    private static final int AT_ONCE = 500;

    private final TimeStampRows rows;

    TimeStampLook(TimeStampRows rows) {
        this.rows = rows;
    }

    List<Finding> look() {
        List<Finding> found = new ArrayList<>();
        List<TimeStampRows.Stamped> some;
        long after = Long.MIN_VALUE;
        do {
            long from = after;
            some = QuarkusTransaction.requiringNew().call(() -> rows.all(from, AT_ONCE));
            for (TimeStampRows.Stamped one : some) {
                if (!holds(one)) {
                    found.add(new Finding(
                            "time-stamp",
                            "time_stamp " + one.size(),
                            "It is not what the authority answered of that head, or not when or who."));
                }
                after = one.size();
            }
        } while (some.size() == AT_ONCE);
        return found;
    }

    private static boolean holds(TimeStampRows.Stamped one) {
        try {
            Hash imprint = TimeStampRequest.imprint(SignedNote.parse(one.note()).text());
            TimeStamp said = TimeStampAnswer.parse(one.answer()).of(imprint, null);
            return said.at().equals(one.at())
                    && said.by().equals(one.by())
                    && Hash.sha256(one.answer()).hex().equals(one.hash());
        } catch (TimeStampRefused | IllegalArgumentException e) {
            return false;
        }
    }
}
