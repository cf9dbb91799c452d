package org.benchtrail.seal.offline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.core.method.Redecided;
import org.benchtrail.trail.TrailEntry;

/** What the entries of a trail tell together: the ticket is replayed from them, and every move out of a step is decided again. */
final class TrailDecisions {
    private final List<Entry> entries = new ArrayList<>();
    private boolean whole = true;

    /** An entry that is not there to be read. */
    void lacking() {
        whole = false;
    }

    void add(TrailEntry entry) {
        entry.readable().ifPresentOrElse(entries::add, this::lacking);
    }

    /** @param named policies of the file, of which each is one only if its name is the hash of its lines */
    void tell(SortedMap<String, String> named, VerifyReport report) {
        named.forEach((name, lines) -> {
            if (!PolicyFingerprint.name(lines).equals(name)) {
                report.found("policy", name, "stands beside the values of another");
            }
        });
        if (!report.findings().isEmpty()) {
            return;
        }
        if (!whole || entries.isEmpty()) {
            report.tell("The ticket was not replayed: not every entry is there for this release to read.");
            return;
        }
        try {
            Map<String, Optional<Policy>> policies = policies(named);
            List<Redecided> refused = Redecided.of(entries, 0, policies);
            refused.forEach(move -> report.unsure("Entry " + move.move().stamp().entry()
                    + " could not be recorded by the rules of this release: " + move.why()
                    + " A release with other rules decided it, or it was written past them."));
            report.tell("Together the entries tell one ticket. "
                    + (policies.values().stream().allMatch(Optional::isPresent)
                            ? "Every move out of a step was decided again."
                            : "Moves whose policy is not in this file were not decided again."));
        } catch (RuntimeException whateverTheyHold) {
            report.found("ticket", "entries 1 to " + entries.size(), "hold each, but together they tell no ticket");
        }
    }

    private Map<String, Optional<Policy>> policies(SortedMap<String, String> named) {
        Map<String, Optional<Policy>> policies = new HashMap<>();
        entries.stream()
                .flatMap(entry -> Stream.ofNullable(entry.stamp().origin()))
                .map(Origin::policy)
                .forEach(name -> policies.put(name, Optional.empty()));
        named.forEach((name, lines) -> policies.put(name, Optional.of(PolicyFingerprint.read(lines))));
        return policies;
    }
}
