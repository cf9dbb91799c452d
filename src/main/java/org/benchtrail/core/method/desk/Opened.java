package org.benchtrail.core.method.desk;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * The report that opens a ticket. Name and contact of the requester are kept outside the trail under
 * {@code requester}, so that they can be erased without breaking a hash.
 *
 * @param words the requester's own words; empty if they say no more than the title
 * @param assignee account of who works it; null while it waits in the queue
 * @param assigneeRoles roles of the assignee at that moment
 */
@ServerOnly
public record Opened(
        String ticket,
        @FreeText String title,
        @FreeText String words,
        Category category,
        String device,
        String place,
        long requester,
        Priority.Impact impact,
        Priority.Urgency urgency,
        @Nullable String assignee,
        Set<Role> assigneeRoles)
        implements DeskFact {
    public Opened {
        FieldChecks t = new FieldChecks();
        title = t.required("title", title, FieldChecks.LINE, "Say in one line what is wrong.");
        words = t.optional("words", words, FieldChecks.PARAGRAPH);
        t.require(category != null, "category", "Choose what kind of trouble it is.");
        device = t.required("device", device, FieldChecks.LINE, "Name the device, or say what it is about.");
        place = t.required("place", place, FieldChecks.LINE, "Say where it is.");
        t.require(impact != null, "impact", "Say who is affected.");
        t.require(urgency != null, "urgency", "Say how much work is held up.");
        assigneeRoles = EnumCopies.set(Role.class, assigneeRoles);
        t.done();
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(title, Source.REPORTED), new Wording(words, Source.REPORTED));
    }

    public Priority priority() {
        return Priority.of(impact, urgency);
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return Missing.rule("not-an-act", "A ticket is opened once, and nobody records a refusal by hand.", "trail");
    }

    /** The kind of trouble decides the checklist. */
    @Override
    public boolean isLessenedBy(@Nullable Fact replacement) {
        return !(replacement instanceof Opened now && now.category == category);
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    @Override
    public List<Missing> keptFrom(JobSheet sheet, StandingFact<?> self, @Nullable Fact replacement, Actor by) {
        boolean same = replacement instanceof Opened now
                && now.ticket.equals(ticket)
                && now.requester == requester
                && Objects.equals(now.assignee, assignee)
                && now.assigneeRoles.equals(assigneeRoles);
        return same
                ? List.of()
                : Missing.rule("not-correctable", "Number, requester and assignee are not corrected here.", "desk");
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                title,
                words,
                device,
                place,
                category.title(),
                impact.words(),
                urgency.words(),
                assignee == null ? "nobody has it yet" : "given to " + reader.name(assignee));
    }
}
