package org.benchtrail.core.method;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * What may be put right, by whom. Answers of which the latest counts (hazards, data, onset, ...) are not corrected but given
 * again; moves, approvals, waivers and signatures are neither.
 */
final class Corrections {
    private static final Set<Class<? extends Fact>> CORRECTABLE = Set.of(
            Opened.class,
            SymptomRecorded.class,
            ReadingRecorded.class,
            ExtractRecorded.class,
            AttachmentAdded.class,
            FindingRecorded.class,
            FindingAnswered.class,
            BenchResultAttached.class,
            SoakTimeReckoned.class,
            TheoryStated.class,
            CheckPlanned.class,
            ActionPlanned.class,
            EffortRecorded.class);

    private Corrections() {}

    /** Whether an entry of that kind is ever put right. */
    static boolean isCorrectable(Fact fact) {
        return CORRECTABLE.contains(fact.getClass());
    }

    static List<Missing> refuse(JobSheet sheet, Corrected correction, Actor actor) {
        StandingFact<Fact> old = sheet.at(correction.entry(), Fact.class, "entry");
        Fact replacement = correction.replacement();
        if (!isCorrectable(old.fact())) {
            throw new Invalid("entry", "An entry of this kind is not corrected: record the present state instead.");
        }
        if (replacement != null && replacement.getClass() != old.fact().getClass()) {
            throw new Invalid("replacement", "The replacement has to be of the same kind as the entry it corrects.");
        }
        if (replacement instanceof BenchResultAttached || replacement instanceof SoakTimeReckoned) {
            throw new Invalid("replacement", "A calculated result is struck out, and calculated again.");
        }
        if (replacement instanceof CheckPlanned check) {
            sheet.at(check.theory(), TheoryStated.class, "replacement.theory");
        }
        boolean own = old.stamp().by().equals(actor.account())
                || actor.account().equals(sheet.course().assignee());
        if (!own && !actor.is(Role.SUPERVISOR)) {
            return Desk.refusal(
                    "not-yours", "Who recorded it, the assignee or a supervisor corrects an entry.", "desk");
        }
        return relied(sheet, old, replacement, actor);
    }

    private static List<Missing> relied(
            JobSheet sheet, StandingFact<Fact> old, @Nullable Fact replacement, Actor actor) {
        if (old.fact() instanceof Opened opened && !sameTicket(opened, replacement)) {
            return Desk.refusal("not-correctable", "Number, requester and assignee are not corrected here.", "desk");
        }
        if (old.fact() instanceof FindingRecorded finding
                && finding.driveFailure()
                && !(replacement instanceof FindingRecorded now && now.driveFailure())
                && !actor.is(Role.SUPERVISOR)) {
            return Desk.refusal(
                    "not-your-role", "Only a supervisor takes a drive-failure finding back.", "data-protected");
        }
        return reliedOn(sheet, old)
                ? Desk.refusal(
                        "relied-on",
                        "Later entries rest on this one as it is: it can no longer be changed, only added to.",
                        "trail")
                : List.of();
    }

    private static boolean sameTicket(Opened old, @Nullable Fact replacement) {
        return replacement instanceof Opened now
                && now.ticket().equals(old.ticket())
                && now.requester() == old.requester()
                && java.util.Objects.equals(now.assignee(), old.assignee())
                && now.assigneeRoles().equals(old.assigneeRoles());
    }

    /** A theory that was chosen or checked, a check that was made, the reading it rests on, an action that was settled. */
    private static boolean reliedOn(JobSheet sheet, StandingFact<Fact> old) {
        int entry = old.entry();
        if (old.fact() instanceof TheoryStated) {
            return !sheet.all(TheoryChosen.class, c -> c.fact().theory() == entry)
                            .isEmpty()
                    || !sheet.all(CheckPlanned.class, c -> c.fact().theory() == entry)
                            .isEmpty();
        }
        if (old.fact() instanceof CheckPlanned) {
            return sheet.result(entry).isPresent();
        }
        if (old.fact() instanceof ReadingRecorded) {
            return !sheet.all(
                            ResultRecorded.class,
                            r -> Integer.valueOf(entry).equals(r.fact().reading()))
                    .isEmpty();
        }
        if (old.fact() instanceof ActionPlanned) {
            return old.round() != sheet.round() || sheet.settlement(entry).isPresent();
        }
        return false;
    }
}
