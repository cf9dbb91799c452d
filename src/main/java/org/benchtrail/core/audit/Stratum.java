package org.benchtrail.core.audit;

import java.util.Locale;
import java.util.function.Predicate;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.DataState;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LossAccepted;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.PartOverrideApproved;

/** A part of a lot that is sampled by itself. A ticket is in the first that fits, so that what is most at stake is looked at. */
public enum Stratum {
    HAZARD("Hazard found", true, Stratum::hazard),
    DATA("Data at risk", true, Stratum::data),
    NO_WAY_BACK("No way back, high risk, or a part let through", true, Stratum::noWayBack),
    WAIVER("Waiver given", true, sheet -> !sheet.all(Waived.class).isEmpty()),
    INCIDENT("The record did not hold", true, sheet -> false),
    AGAIN("Reopened, or a repair that failed", true, Stratum::again),
    TRAINEE("Worked on by a trainee", false, sheet -> sheet.workedBy(Role.TRAINEE)),
    REST("The rest", false, sheet -> true);

    private final String title;
    private final boolean census;
    private final Predicate<JobSheet> fits;

    Stratum(String title, boolean census, Predicate<JobSheet> fits) {
        this.title = title;
        this.census = census;
        this.fits = fits;
    }

    /**
     * The stratum of a ticket.
     *
     * @param sheet as it was when the ticket ended
     * @param incident whether its record was ever found not to hold
     */
    public static Stratum of(JobSheet sheet, boolean incident) {
        for (Stratum stratum : values()) {
            if (stratum == INCIDENT ? incident : stratum.fits.test(sheet)) {
                return stratum;
            }
        }
        throw new IllegalStateException("the last stratum takes all");
    }

    public String title() {
        return title;
    }

    /** Whether every ticket of it is looked at unless the plan says otherwise. */
    public boolean census() {
        return census;
    }

    /** As a plan names it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static boolean hazard(JobSheet sheet) {
        return sheet.all(HazardsScreened.class).stream()
                .anyMatch(h -> !h.fact().found().isEmpty());
    }

    private static boolean data(JobSheet sheet) {
        return sheet.driveFailure().isPresent()
                || !sheet.all(LossAccepted.class).isEmpty()
                || !sheet.all(DataAnswered.class, d -> d.fact().state() == DataState.IMPOSSIBLE)
                        .isEmpty()
                || !sheet.all(Waived.class, w -> w.fact().requirement().startsWith("data-"))
                        .isEmpty();
    }

    private static boolean noWayBack(JobSheet sheet) {
        return !sheet.all(PartOverrideApproved.class).isEmpty()
                || sheet.all(ActionPlanned.class).stream()
                        .anyMatch(a -> Boolean.TRUE.equals(a.fact().irreversible())
                                || a.fact().highRisk());
    }

    private static boolean again(JobSheet sheet) {
        return !sheet.all(Reopened.class).isEmpty()
                || !sheet.all(VerifyFailed.class).isEmpty();
    }
}
