package org.benchtrail.core.diagnosis;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A closed ticket that may teach something.
 *
 * @param technician whose case it is
 * @param site customer site or author group, or null if not known
 * @param acceptedBy the supervisor who accepted it, or null; the technician's own acceptance does not count
 * @param verified whether the fix was verified (step 5)
 * @param cause id of the verified cause, or {@link Model#UNLISTED} if it was not in the list
 */
public record ClosedCase(
        String id,
        String technician,
        @Nullable String site,
        @Nullable String acceptedBy,
        boolean verified,
        String cause,
        Confirmation confirmation,
        Instant closed,
        List<CaseFinding> observations) {
    public ClosedCase {
        observations = List.copyOf(observations);
    }

    /** How the cause is known; the weight is common practice, no source. */
    public enum Confirmation {
        MEASURED(1),
        REPAIRED(0.8),
        PRESUMED(0);

        private final double weight;

        Confirmation(double weight) {
            this.weight = weight;
        }

        public double weight() {
            return weight;
        }
    }

    /**
     * A finding as it was reported.
     *
     * @param intake whether it is a standard intake question, asked whatever was suspected
     * @param beforeSettled whether it was taken before the cause was settled; later ones are confirmations, not evidence
     */
    public record CaseFinding(String finding, String value, boolean intake, boolean beforeSettled) {}

    boolean counts() {
        return verified && acceptedBy != null && !acceptedBy.equals(technician) && confirmation.weight() > 0;
    }
}
