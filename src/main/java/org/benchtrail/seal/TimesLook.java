package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.function.Consumer;
import org.benchtrail.core.integrity.SeenTimes;
import org.benchtrail.seal.VerificationRows.Finding;

/**
 * The part of a look that holds the times of entries against those at which witnesses saw the log. Only the entries that are out of
 * their span come from the database.
 */
@ApplicationScoped
class TimesLook {
    /** Where a clock was wrong for a day every entry is: the first ones say enough. */
    private static final int MOST = 100;

    private final VerificationRows runs;

    TimesLook(VerificationRows runs) {
        this.runs = runs;
    }

    Walk begin(Consumer<Finding> found) {
        SeenTimes seen = new SeenTimes(QuarkusTransaction.requiringNew().call(runs::seenHeads));
        seen.setBack().stream()
                .limit(MOST)
                .forEach(
                        head -> found.accept(
                                new Finding(
                                        "time",
                                        "head of " + head.size(),
                                        "The server says that it signed it at " + head.signed()
                                                + ", but before that a witness had seen a smaller one: the server's clock was set back.")));
        return new Walk(seen, found);
    }

    /** From the first leaf to the last, some at a time. */
    final class Walk {
        private final SeenTimes seen;
        private final Consumer<Finding> found;
        private int left = MOST;

        private Walk(SeenTimes seen, Consumer<Finding> found) {
            this.seen = seen;
            this.found = found;
        }

        void leaves(long from, long to) {
            if (left == 0 || !seen.known()) {
                return;
            }
            List<SeenTimes.Span> spans = seen.between(from, to);
            List<VerificationRows.OutOfTime> some =
                    QuarkusTransaction.requiringNew().call(() -> runs.outOfTime(spans, left));
            left -= some.size();
            some.forEach(one -> found.accept(new Finding(
                    "time",
                    one.stream() + " " + one.place(),
                    spans.get(one.span() - 1).fault(one.at()))));
        }
    }
}
