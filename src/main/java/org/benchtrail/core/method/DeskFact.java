package org.benchtrail.core.method;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What happens at the desk: opening, moves between steps, hand-overs, waivers, corrections, refusals. */
public sealed interface DeskFact extends Fact
        permits DeskFact.Opened,
                DeskFact.CautionsAcknowledged,
                DeskFact.Waived,
                DeskFact.Corrected,
                DeskFact.Refused,
                MoveFact {
    @Override
    default @Nullable Step step() {
        return null;
    }

    /**
     * The report that opens a ticket. Name and contact of the requester are kept outside the trail under
     * {@code requester}, so that they can be erased without breaking a hash.
     *
     * @param words the requester's own words; empty if they say no more than the title
     * @param assignee account of who works it; null while it waits in the queue
     * @param assigneeRoles roles of the assignee at that moment
     */
    record Opened(
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
            Texts t = new Texts();
            title = t.required("title", title, Texts.LINE, "Say in one line what is wrong.");
            words = t.optional("words", words, Texts.PARAGRAPH);
            t.require(category != null, "category", "Choose what kind of trouble it is.");
            device = t.required("device", device, Texts.LINE, "Name the device, or say what it is about.");
            place = t.required("place", place, Texts.LINE, "Say where it is.");
            t.require(impact != null, "impact", "Say whom it touches.");
            t.require(urgency != null, "urgency", "Say how much work is held up.");
            assigneeRoles = Texts.roles(assigneeRoles);
            t.done();
        }

        public Priority priority() {
            return Priority.of(impact, urgency);
        }
    }

    /** Cautions read and taken before the check or action with that entry number. */
    record CautionsAcknowledged(int about, Set<Caution> cautions) implements DeskFact {
        public CautionsAcknowledged {
            cautions = Texts.cautions(cautions);
        }
    }

    /** A supervisor lets one requirement go unmet. */
    record Waived(String requirement, String reason) implements DeskFact {
        public Waived {
            Texts t = new Texts();
            requirement = t.required("requirement", requirement, 60, "Name the requirement.");
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why it may go unmet.");
            t.done();
        }
    }

    /**
     * An earlier entry put right. The old one stays readable in the trail.
     *
     * @param entry number of the entry that is corrected
     * @param replacement what stands instead, of the same kind; null strikes it out
     */
    record Corrected(int entry, String reason, @Nullable Fact replacement) implements DeskFact {
        public Corrected {
            Texts t = new Texts();
            reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why it is corrected.");
            t.done();
        }
    }

    /** An act that was refused, and the codes of what was missing. */
    record Refused(String act, List<String> missing) implements DeskFact {
        public Refused {
            missing = missing == null ? List.of() : List.copyOf(missing);
        }
    }

    /** What a ticket on hold waits for. */
    enum WaitingFor {
        PART("a part"),
        REQUESTER("the requester"),
        SUPPLIER("a supplier"),
        WINDOW("a maintenance window"),
        SOAK("the soak time");

        private final String words;

        WaitingFor(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Follow-up of a hold. */
    record Hold(WaitingFor waitingFor, Instant followUp, String note) {}
}
