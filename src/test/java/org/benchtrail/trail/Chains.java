package org.benchtrail.trail;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.TicketNumber;

/** Whole trails for tests. */
final class Chains {
    static final TicketNumber TICKET = TicketNumber.parse("40718-6");
    static final Instant START = Instant.parse("2031-03-03T08:00:00Z");

    private Chains() {}

    static Stamp stamp(int entry) {
        return new Stamp(entry, START.plusSeconds(60L * entry), "ines", Set.of(Role.TECHNICIAN));
    }

    static List<TrailEntry> of(List<Fact> facts) {
        List<TrailEntry> chain = new ArrayList<>();
        String previous = HashChain.START;
        for (Fact fact : facts) {
            chain.add(EntryCodec.encode(TICKET.toString(), new Entry(stamp(chain.size() + 1), fact), previous));
            previous = chain.get(chain.size() - 1).hash();
        }
        return chain;
    }
}
