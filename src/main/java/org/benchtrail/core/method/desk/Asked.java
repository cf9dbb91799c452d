package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * Something is asked of those who can give it; it waits where they see it.
 *
 * @param requirement code of the requirement that is to be waived; null unless a waiver is asked for
 */
public record Asked(
        AskKind what,
        @Nullable String requirement,
        @FreeText String note) implements DeskFact {
    public Asked {
        FieldChecks t = new FieldChecks();
        t.require(what != null, "what", "Say what is asked for: an approval, a waiver, or a mentor.");
        requirement = t.orNull("requirement", requirement, 60);
        t.require(
                what != AskKind.WAIVER || requirement != null,
                "requirement",
                "Name the requirement that is to be waived.");
        t.require(
                what == AskKind.WAIVER || requirement == null,
                "requirement",
                "A requirement is named only where a waiver is asked for.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.require(what != AskKind.WAIVER || !note.isEmpty(), "note", "Say why it should be waived.");
        t.done();
    }

    /** Only for what is missing now; the same is not asked twice while it waits. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        if (Asks.waiting(s.sheet()).stream().anyMatch(w -> w.fact().sameAs(this))) {
            return Missing.rule("asked-already", "This was asked for and waits for an answer.", "asks");
        }
        return switch (what) {
            case WAIVER -> Waived.unsound(s, String.valueOf(requirement));
            case APPROVAL ->
                Method.approvalReasons(s.sheet(), s.policy()).isEmpty()
                        ? Missing.rule(
                                "nothing-to-approve", "This plan needs no approval as it stands.", "plan-approved")
                        : List.of();
            case MENTOR -> List.of();
        };
    }

    private boolean sameAs(Asked other) {
        return what == other.what && java.util.Objects.equals(requirement, other.requirement);
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(
                requirement == null ? what.words() : what.words() + " of " + Told.requirement(requirement), note);
    }
}
