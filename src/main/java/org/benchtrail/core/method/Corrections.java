package org.benchtrail.core.method;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.DeskFact.Corrected;
import org.benchtrail.core.method.DeskFact.Opened;
import org.benchtrail.core.method.IdentifyFact.FindingRecorded;
import org.jspecify.annotations.Nullable;

/**
 * What may be put right, by whom. Answers of which the latest counts (hazards, data, onset, ...) are not corrected but given
 * again; moves, approvals, waivers and signatures are neither.
 */
final class Corrections {
    private static final Set<Class<? extends Fact>> CORRECTABLE = Set.of(
            Opened.class,
            IdentifyFact.SymptomRecorded.class,
            IdentifyFact.ReadingRecorded.class,
            IdentifyFact.ExtractRecorded.class,
            IdentifyFact.AttachmentAdded.class,
            FindingRecorded.class,
            IdentifyFact.FindingAnswered.class,
            IdentifyFact.BenchResultAttached.class,
            IdentifyFact.SoakTimeReckoned.class,
            TheorizeFact.TheoryStated.class,
            TestFact.CheckPlanned.class,
            PlanFact.ActionPlanned.class,
            DocumentFact.EffortRecorded.class);

    private Corrections() {}

    /** Whether an entry of that kind is ever put right. */
    static boolean isCorrectable(Fact fact) {
        return CORRECTABLE.contains(fact.getClass());
    }

    static List<Missing> refuse(JobSheet sheet, Corrected correction, Actor actor) {
        Noted<Fact> old = sheet.at(correction.entry(), Fact.class, "entry");
        Fact replacement = correction.replacement();
        if (!isCorrectable(old.fact())) {
            throw new Invalid("entry", "An entry of this kind is not corrected: record the present state instead.");
        }
        if (replacement != null && replacement.getClass() != old.fact().getClass()) {
            throw new Invalid("replacement", "The replacement has to be of the same kind as the entry it corrects.");
        }
        if (replacement instanceof IdentifyFact.BenchResultAttached
                || replacement instanceof IdentifyFact.SoakTimeReckoned) {
            throw new Invalid("replacement", "A calculated result is struck out, and calculated again.");
        }
        if (replacement instanceof TestFact.CheckPlanned check) {
            sheet.at(check.theory(), TheorizeFact.TheoryStated.class, "replacement.theory");
        }
        boolean own = old.stamp().by().equals(actor.account())
                || actor.account().equals(sheet.course().assignee());
        if (!own && !actor.is(Role.SUPERVISOR)) {
            return Desk.refusal(
                    "not-yours", "Who recorded it, the assignee or a supervisor corrects an entry.", "desk");
        }
        return relied(sheet, old, replacement, actor);
    }

    private static List<Missing> relied(JobSheet sheet, Noted<Fact> old, @Nullable Fact replacement, Actor actor) {
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
    private static boolean reliedOn(JobSheet sheet, Noted<Fact> old) {
        int entry = old.entry();
        if (old.fact() instanceof TheorizeFact.TheoryStated) {
            return !sheet.all(TheorizeFact.TheoryChosen.class, c -> c.fact().theory() == entry)
                            .isEmpty()
                    || !sheet.all(TestFact.CheckPlanned.class, c -> c.fact().theory() == entry)
                            .isEmpty();
        }
        if (old.fact() instanceof TestFact.CheckPlanned) {
            return sheet.result(entry).isPresent();
        }
        if (old.fact() instanceof IdentifyFact.ReadingRecorded) {
            return !sheet.all(
                            TestFact.ResultRecorded.class,
                            r -> Integer.valueOf(entry).equals(r.fact().reading()))
                    .isEmpty();
        }
        if (old.fact() instanceof PlanFact.ActionPlanned) {
            return old.round() != sheet.round() || sheet.settlement(entry).isPresent();
        }
        return false;
    }
}
