package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** What is sealed at once is the last leaf of its head, whatever was queued behind it meanwhile. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class SealNowTest {
    private static final Actor NORA = new Actor("now-nora", "Nora", Set.of(Role.TECHNICIAN));

    private static final String WAITING = "select string_agg(stream || ' ' || place, ',' order by id) from seal_queue";

    @Inject
    PeopleActs people;

    @Inject
    SealNow seal;

    @Inject
    LogRows rows;

    private long signed() {
        return QuarkusTransaction.requiringNew()
                .call(() -> rows.newest().orElseThrow().size());
    }

    private long leaves() {
        return QuarkusTransaction.requiringNew().call(rows::size);
    }

    @Test
    void itIsTheLastLeafOfItsHead_andWhatIsBehindItComesWithTheNext() {
        people.ensureAccount(NORA.account(), NORA.name(), NORA.roles(), "a long enough password");
        seal.all();
        long before = leaves();
        assertEquals(before, signed());
        people.setZone(NORA, "UTC");
        people.setZone(NORA, "Europe/Berlin");
        people.setZone(NORA, "UTC");
        List<String> waiting = List.of(TestDatabase.one(WAITING).split(","));
        assertEquals(3, waiting.size(), waiting.toString());
        String[] second = waiting.get(1).split(" ");

        seal.upTo(second[0], Long.parseLong(second[1]));
        assertEquals(before + 2, leaves());
        assertEquals(before + 2, signed());
        assertEquals(waiting.get(2), TestDatabase.one(WAITING));

        // one that is sealed already holds nothing up
        seal.upTo(second[0], Long.parseLong(second[1]));
        assertNull(TestDatabase.one(WAITING));
        assertEquals(before + 3, signed());
    }
}
