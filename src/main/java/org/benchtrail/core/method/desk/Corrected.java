package org.benchtrail.core.method.desk;

import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.GuardedAct;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * An earlier entry put right. The old one stays readable in the trail.
 *
 * @param entry number of the entry that is corrected
 * @param replacement what stands instead, of the same kind; null strikes it out
 */
public record Corrected(
        int entry, @FreeText String reason, @Nullable Fact replacement) implements DeskFact {
    public Corrected {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it is corrected.");
        t.done();
    }

    /** Whoever puts other work in its place does that work. */
    @Override
    public Part takesPart() {
        return replacement == null ? Part.NONE : replacement.takesPart();
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        boolean own = s.sheet()
                .latest(
                        Fact.class,
                        f -> f.entry() == entry && f.stamp().person().equals(actor.account()))
                .isPresent();
        return own || actor.is(Role.SUPERVISOR) || Persons.isAssignee(s.sheet().course(), actor)
                ? List.of()
                : Missing.rule("not-yours", "Who recorded it, the assignee or a supervisor corrects an entry.", "desk");
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(entry, Fact.class, "entry"));
    }

    @Override
    public Fact completedBy(ServerKnowledge server) {
        return replacement == null ? this : new Corrected(entry, reason, replacement.completedBy(server));
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        StandingFact<Fact> old = s.sheet().at(entry, Fact.class, "entry");
        requireCorrectable(old.fact());
        if (replacement != null) {
            replacement.references().forEach(r -> s.sheet().at(r.entry(), r.kind(), "replacement." + r.field()));
        }
        List<Missing> kept = old.fact().keptFrom(s.sheet(), old, replacement, actor);
        return kept.isEmpty() && replacement != null ? replacement.unsound(s, actor) : kept;
    }

    /** A deed that the entry was not before is done as if it were new. */
    @Override
    public Optional<GuardedAct> guardedAct(JobSheet sheet) {
        boolean before = sheet.latest(Fact.class, f -> f.entry() == entry)
                .flatMap(old -> old.fact().guardedAct(sheet))
                .isPresent();
        return replacement == null || before ? Optional.empty() : replacement.guardedAct(sheet);
    }

    private void requireCorrectable(Fact old) {
        if (old.correctable() == Correctable.NEVER) {
            throw new Invalid("entry", "An entry of this kind is not corrected: record the present state instead.");
        }
        if (replacement != null && replacement.getClass() != old.getClass()) {
            throw new Invalid("replacement", "The replacement has to be of the same kind as the entry it corrects.");
        }
        if (replacement != null && old.correctable() == Correctable.STRUCK) {
            throw new Invalid("replacement", "A calculated result is struck out, and calculated again.");
        }
    }

    @Override
    public RecordPlace placeIn(JobSheet sheet) {
        return RecordPlace.AT_ENTRY;
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(
                replacement == null
                        ? "entry " + entry + " struck out"
                        : "entry " + entry + " now says: " + replacement.told(reader),
                reason);
    }
}
