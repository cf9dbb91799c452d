package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A mentor's or supervisor's remark on the work: on an entry, on a requirement, or on all of it.
 *
 * @param entry number of the entry that it is about; null if it is about none
 * @param requirement code of the requirement that it is about; null if it is about none
 * @param mark what a mentor says of that requirement; null if it is not judged
 */
public record Remarked(
        @Nullable Integer entry,
        @Nullable String requirement,
        @FreeText String text,
        @Later @Nullable WorkMark mark) implements DeskFact {
    public Remarked {
        FieldChecks t = new FieldChecks();
        requirement = t.orNull("requirement", requirement, 60);
        text = t.required("text", text, FieldChecks.PARAGRAPH, "Write the remark.");
        t.require(mark == null || requirement != null, "requirement", "Choose the requirement that is judged.");
        t.done();
    }

    /** A remark that judges nothing. */
    public Remarked(@Nullable Integer entry, @Nullable String requirement, String text) {
        this(entry, requirement, text, null);
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        if (mark != null && !actor.is(Role.MENTOR)) {
            return Missing.rule(
                    "not-your-role", "A mentor marks the work; a supervisor puts remarks, or reviews it.", "remarks");
        }
        return mark != null && s.sheet().isHand(actor.account())
                ? Missing.rule("own-work", "You have worked on this ticket: somebody who has not judges it.", "remarks")
                : Persons.reviewer(actor, "A mentor or a supervisor puts remarks on the work.", "remarks");
    }

    @Override
    public List<Reference> references() {
        return entry == null ? List.of() : List.of(new Reference(entry, Fact.class, "entry"));
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        if (requirement != null && Requirements.of(requirement).isEmpty()) {
            throw new Invalid("requirement", "There is no requirement '" + requirement + "'.");
        }
        return List.of();
    }

    @Override
    public RecordPlace placeIn(JobSheet sheet) {
        return entry == null ? RecordPlace.LINE : RecordPlace.AT_ENTRY;
    }

    @Override
    public String told(Telling reader) {
        return requirement == null
                ? text
                : Told.noted("on " + Told.requirement(requirement) + (mark == null ? "" : ", " + mark.words()), text);
    }
}
