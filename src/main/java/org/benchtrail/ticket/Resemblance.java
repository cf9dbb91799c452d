package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.LikenessChecked;

/** What is like a ticket, as far as its sheet tells: other tickets and known causes. Where there is nothing, nothing is asked. */
@ApplicationScoped
public class Resemblance {
    private final TicketListQueries lists;
    private final KnownCauses known;

    Resemblance(TicketListQueries lists, KnownCauses known) {
        this.lists = lists;
        this.known = known;
    }

    /** Tickets that are like it, the likest first; none once they were looked at. */
    public List<TicketLine> tickets(TicketNumber number, JobSheet sheet, Actor viewer) {
        return isAsked(sheet) && isOpenTo(sheet, viewer)
                ? lists.alike(sheet.opened().title() + " " + sheet.opened().device(), number.serial(), viewer)
                : List.of();
    }

    /** Whether it still has to be looked at what is alike, and there is nothing. */
    public boolean isNothing(TicketNumber number, JobSheet sheet, Actor viewer) {
        return isAsked(sheet)
                && isOpenTo(sheet, viewer)
                && tickets(number, sheet, viewer).isEmpty()
                && known.of(sheet).isEmpty();
    }

    /** Whether the viewer may see what is alike, and whether anything is; else a forecast comes first. */
    public static boolean isOpenTo(JobSheet sheet, Actor viewer) {
        return Sight.ofLikeness(sheet, viewer) instanceof Sight.Open;
    }

    /** Whether it still has to be looked at what is alike. */
    public static boolean isAsked(JobSheet sheet) {
        return sheet.course().isOpen()
                && sheet.step() == Step.IDENTIFY
                && sheet.latest(LikenessChecked.class).isEmpty();
    }

    /**
     * The gate as it stands, with what is met by itself.
     *
     * @param nothing whether nothing is alike
     */
    public static List<Requirement.Status> gate(JobSheet sheet, Policy policy, Instant now, boolean nothing) {
        List<Requirement.Status> gate = Method.gate(sheet, policy, now);
        return nothing ? gate.stream().map(Resemblance::metByItself).toList() : gate;
    }

    /** The gate as it may be told to the viewer. */
    public static List<Requirement.Status> gate(
            JobSheet sheet, Policy policy, Instant now, boolean nothing, Actor viewer) {
        return gate(sheet, policy, now, nothing).stream()
                .map(status -> Sight.told(status, sheet, viewer))
                .toList();
    }

    private static Requirement.Status metByItself(Requirement.Status status) {
        return status.requirement() == IdentifyRequirement.LIKENESS_CHECKED
                ? new Requirement.Status(status.requirement(), Requirement.State.MET, "")
                : status;
    }
}
