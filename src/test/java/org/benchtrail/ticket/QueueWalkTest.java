package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The queue walked page by page, in each order and each direction, while tickets change and others come in. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class QueueWalkTest {
    private static final Actor IDA = new Actor("walk-ida", "Ida", Set.of(Role.TECHNICIAN, Role.SUPERVISOR));
    private static final int PAGE = 4;
    private static final int TICKETS = 31;

    @Inject
    TicketActs acts;

    @Inject
    TicketListQueries lists;

    private final String place = "Walk hall " + UUID.randomUUID();

    static List<Sorting> orders() {
        return Sorting.all();
    }

    private TicketNumber open(int n) {
        Priority.Impact impact = Priority.Impact.values()[n % 3];
        Priority.Urgency urgency = Priority.Urgency.values()[n / 3 % 3];
        return acts.open(
                        new NewTicket(
                                "Lamp " + n + " is dark",
                                "",
                                Category.OTHER,
                                "Lamp " + n % 5,
                                place,
                                "Rae",
                                "room 4",
                                impact,
                                urgency,
                                true),
                        IDA)
                .number();
    }

    private void touch(TicketNumber number, int version) {
        acts.perform(number, version, List.of(sheet -> new FindingRecorded("Looked at", false)), IDA);
    }

    private QueueFilter.Choice here(Sorting sorting) {
        return QueueFilter.of(Standing.OPEN).place(place).sorted(sorting);
    }

    private static Comparator<TicketLine> comparator(Sorting sorting) {
        Comparator<TicketLine> order = switch (sorting.by()) {
            case DUE -> Comparator.comparing(TicketLine::due);
            case NUMBER -> Comparator.comparing(TicketLine::serial);
            case PRIORITY -> Comparator.comparing(TicketLine::priority).thenComparing(TicketLine::due);
            case TOUCHED -> Comparator.comparing(TicketLine::touched);
        };
        Comparator<TicketLine> whole = order.thenComparing(TicketLine::serial);
        return sorting.back() ? whole.reversed() : whole;
    }

    @ParameterizedTest
    @MethodSource("orders")
    void whatDoesNotChange_isMetOnce_andInOrder(Sorting sorting) {
        List<TicketNumber> numbers = new ArrayList<>();
        for (int n = 0; n < TICKETS; n++) {
            numbers.add(open(n));
        }
        Set<Integer> changed = new HashSet<>();
        List<TicketLine> met = new ArrayList<>();
        QueuePart part = lists.queue(here(sorting).lines(PAGE), IDA);
        for (int page = 0; ; page++) {
            met.addAll(part.tickets());
            assertTrue(page < TICKETS, "the walk does not end");
            if (part.after() == null) {
                break;
            }
            // one that was met and one that may not have been move in the order of last acts; a new one comes in
            TicketNumber before = new TicketNumber(part.tickets().get(0).serial());
            TicketNumber other = numbers.get((page * 7 + 3) % TICKETS);
            for (TicketNumber number : new HashSet<>(List.of(before, other))) {
                if (changed.add(number.serial())) {
                    touch(number, 1);
                }
            }
            changed.add(open(100 + page).serial());
            part = lists.queue(
                    here(sorting).after(Cursor.parse(part.after().token())).lines(PAGE), IDA);
        }
        List<Integer> unchanged = numbers.stream()
                .map(TicketNumber::serial)
                .filter(n -> !changed.contains(n))
                .toList();
        assertTrue(unchanged.size() > 5, () -> "too few stay as they are: " + unchanged);
        List<Integer> seen =
                met.stream().map(TicketLine::serial).filter(unchanged::contains).toList();
        assertEquals(Set.copyOf(unchanged), Set.copyOf(seen));
        assertEquals(unchanged.size(), seen.size());
        List<TicketLine> still =
                met.stream().filter(t -> unchanged.contains(t.serial())).toList();
        assertEquals(still.stream().sorted(comparator(sorting)).toList(), still);
        if (sorting.by() != Sorting.Key.TOUCHED) {
            // nothing that happened moves a ticket in the other orders: whoever was there is met once
            List<Integer> all = met.stream().map(TicketLine::serial).toList();
            assertTrue(
                    all.containsAll(numbers.stream().map(TicketNumber::serial).toList()));
            assertEquals(all.size(), Set.copyOf(all).size());
        }
    }

    @ParameterizedTest
    @MethodSource("orders")
    void aPlaceOfAnotherOrder_isRefused(Sorting sorting) {
        open(1);
        open(2);
        Cursor after = lists.queue(here(sorting).lines(1), IDA).after();
        Sorting turned = new Sorting(sorting.by(), !sorting.back());
        assertThrows(Invalid.class, () -> here(turned).after(after).lines(1));
    }
}
