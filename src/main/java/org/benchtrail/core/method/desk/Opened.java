package org.benchtrail.core.method.desk;

import java.util.Set;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
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
public record Opened(
        String ticket,
        String title,
        String words,
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
        t.require(impact != null, "impact", "Say whom it touches.");
        t.require(urgency != null, "urgency", "Say how much work is held up.");
        assigneeRoles = EnumCopies.set(Role.class, assigneeRoles);
        t.done();
    }

    public Priority priority() {
        return Priority.of(impact, urgency);
    }
}
