package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.people.Directory;
import org.benchtrail.site.DeviceBook;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;

/** What the server adds to facts before the method decides about them. */
@ApplicationScoped
class Completions {
    private final Tickets tickets;
    private final TrailStore trail;
    private final KeptFiles attachments;
    private final Directory people;
    private final Diagnoses diagnoses;
    private final DeviceBook devices;

    Completions(
            Tickets tickets,
            TrailStore trail,
            KeptFiles attachments,
            Directory people,
            Diagnoses diagnoses,
            DeviceBook devices) {
        this.tickets = tickets;
        this.trail = trail;
        this.attachments = attachments;
        this.people = people;
        this.diagnoses = diagnoses;
        this.devices = devices;
    }

    /** On a sheet as it is now, by the policy in force. */
    ServerKnowledge on(JobSheet sheet, Policy policy) {
        return new Completion(sheet, policy);
    }

    /** What facts are completed with, see {@link Fact#completedBy}. */
    private final class Completion implements ServerKnowledge {
        private final JobSheet sheet;
        private final Policy policy;

        Completion(JobSheet sheet, Policy policy) {
            this.sheet = sheet;
            this.policy = policy;
        }

        @Override
        public Category category() {
            return sheet.opened().category();
        }

        @Override
        public Set<Caution> cautionsOfFinding(String finding) {
            return diagnoses.cautionsOf(sheet, finding);
        }

        @Override
        public Optional<Limit> limitOf(String finding) {
            return diagnoses.limitOf(sheet, finding);
        }

        @Override
        public Optional<Limit> nameplateOf(String quantity) {
            return devices.known(sheet.opened().device())
                    .flatMap(d -> d.limits().of(quantity));
        }

        @Override
        public Set<Caution> cautionsOfRepair() {
            return diagnoses.cautionsOfRepair(sheet);
        }

        @Override
        public Actor worker(String account) {
            return people.worker(account)
                    .orElseThrow(
                            () -> new Invalid("to", "Nobody who works on tickets has the account '" + account + "'."));
        }

        @Override
        public int fileSize(String sha256) {
            return attachments
                    .size(sha256)
                    .orElseThrow(() ->
                            new Invalid("sha256", "Send the file first: no file with this SHA-256 is kept here."));
        }

        @Override
        public void requireOriginal(String ticket) {
            TicketNumber number = TicketNumber.parse(ticket);
            Ticket original = tickets.kept(number)
                    .orElseThrow(() -> new Invalid(
                            "duplicateOf", "There is no ticket " + ticket + ": give the number of the other one."));
            if (original.standing == Standing.CANCELLED
                    && isDuplicate(trail.read(number).entries())) {
                throw new Invalid(
                        "duplicateOf",
                        ticket + " was itself cancelled as a duplicate: name the ticket that is worked.");
            }
        }

        private boolean isDuplicate(List<TrailEntry> stored) {
            return stored.stream()
                    .filter(entry -> entry.kind().equals(FactKinds.name(Cancelled.class)))
                    .map(entry -> entry.read().fact())
                    .anyMatch(fact -> fact instanceof Cancelled cancelled && cancelled.duplicateOf() != null);
        }

        @Override
        public Policy policy() {
            return policy;
        }
    }
}
