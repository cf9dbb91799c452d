package org.benchtrail.core.learning;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.diagnosis.Calibration;
import org.benchtrail.core.diagnosis.ClosedCase;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Report;
import org.jspecify.annotations.Nullable;

/**
 * What one closed ticket has to teach.
 *
 * @param category id in the catalogue
 * @param cause id in the catalogue, or {@link Model#UNLISTED}
 * @param causeWords the cause as the ticket names it
 * @param technician account of who worked it
 * @param site customer site; null if the ticket's place names none
 * @param seen at most one for each finding before the cause was settled, and one after
 * @param shown what the server stated before the last decisive test; null if it stated nothing
 */
public record TicketCase(
        String category,
        String cause,
        String causeWords,
        String technician,
        @Nullable String site,
        ClosedCase.Confirmation confirmation,
        Instant closed,
        List<Seen> seen,
        @Nullable ShownRanking shown) {
    public TicketCase {
        seen = List.copyOf(seen);
    }

    /**
     * A finding as the ticket recorded it.
     *
     * @param entry number of the entry
     * @param reliability of the report, in [0, 0.98]
     * @param intake whether it was asked while the problem was being identified, whatever was suspected
     * @param beforeSettled whether it was taken before the cause was settled
     */
    public record Seen(
            int entry, String finding, String value, double reliability, boolean intake, boolean beforeSettled) {
        ClosedCase.CaseFinding observation() {
            return new ClosedCase.CaseFinding(finding, value, intake, beforeSettled);
        }
    }

    /** A cause with the probability stated for it, a decimal in [0, 1]. */
    public record Stated(String cause, String probability) {}

    /**
     * A ranking as it was shown.
     *
     * @param entry number of the entry
     * @param catalogue version it was made with
     */
    public record ShownRanking(int entry, int catalogue, List<Stated> causes) {
        public ShownRanking {
            causes = List.copyOf(causes);
        }

        /**
         * As a forecast of what proved true. What is left over to 1 is one class more, which also stands for a truth that
         * the ranking did not name.
         */
        public Calibration.Forecast forecast(String truth) {
            List<Double> p = new ArrayList<>();
            int index = causes.size();
            double sum = 0;
            for (int k = 0; k < causes.size(); k++) {
                double stated = Double.parseDouble(causes.get(k).probability());
                p.add(stated);
                sum += stated;
                index = causes.get(k).cause().equals(truth) ? k : index;
            }
            p.add(Math.max(0, 1 - sum));
            return new Calibration.Forecast(p, index);
        }
    }

    /** What was known when the ranking was shown, for ranking it again; empty if none was shown. */
    public Evidence evidenceShown() {
        List<Report> reports = new ArrayList<>();
        for (Seen s : seen) {
            if (shown != null && s.entry() < shown.entry()) {
                String id = String.valueOf(s.entry());
                reports.add(new Report(id, s.finding(), s.value(), s.reliability(), closed, false));
            }
        }
        return new Evidence(reports, List.of());
    }

    /**
     * As the learning takes it.
     *
     * @param id decides nothing but the order of summing
     * @param acceptedBy the supervisor
     * @param truth the cause, if a later catalogue knows it by an id
     */
    public ClosedCase closedCase(String id, String acceptedBy, String truth) {
        return new ClosedCase(
                id,
                technician,
                site,
                acceptedBy,
                true,
                truth,
                confirmation,
                closed,
                seen.stream().map(Seen::observation).toList());
    }
}
