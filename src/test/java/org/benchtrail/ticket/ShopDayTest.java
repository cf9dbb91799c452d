package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Random;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.Waits;
import org.benchtrail.pages.Html;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.site.SiteBook;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.FormElement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A day of a shop in which people meet on tickets: some work theirs over the API, with wrong turns, others decide on Today whatever
 * stands there, all at once. {@code -Dshop.people=40 -Dshop.tickets=200} for a long day; the seed is printed.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ShopDayTest {
    private static final int TICKETS = Integer.getInteger("shop.tickets", 6);
    private static final String PASSWORD = "a long enough password";
    private static final int PEOPLE = Integer.getInteger("shop.people", 6);
    private static final List<Role> ROLES =
            List.of(Role.TECHNICIAN, Role.TECHNICIAN, Role.TRAINEE, Role.SUPERVISOR, Role.SUPERVISOR, Role.MENTOR);

    @Inject
    PeopleActs people;

    @Inject
    TicketQueries tickets;

    @Inject
    SiteBook site;

    @Inject
    EntityManager database;

    private AttackSite shop;
    private final List<String> workers = new ArrayList<>(List.of("way-ines", "way-ole", "way-tom"));
    private final List<String> judges = new ArrayList<>(List.of("way-sue", "way-boris", "way-marek"));
    private final Queue<ApiDesk> desks = new ConcurrentLinkedQueue<>();
    private final AtomicInteger recorded = new AtomicInteger();
    private final AtomicInteger turnedBack = new AtomicInteger();
    private final AtomicInteger decided = new AtomicInteger();
    private final AtomicInteger compared = new AtomicInteger();
    private final AtomicInteger working = new AtomicInteger();

    @BeforeEach
    void shop() {
        shop = new AttackSite(people);
        for (int more = ROLES.size(); more < PEOPLE; more++) {
            Role role = ROLES.get(more % ROLES.size());
            String login = "day-" + more;
            shop.hire(login, role);
            (role == Role.TECHNICIAN || role == Role.TRAINEE ? workers : judges).add(login);
        }
    }

    @Test
    void nothingAcknowledgedIsMissing_andTodayIsRightAllTheTime() throws Exception {
        long seed = System.nanoTime();
        long began = System.nanoTime();
        List<Callable<Void>> day = new ArrayList<>();
        Random seeds = new Random(seed);
        working.set(workers.size());
        workers.forEach(who -> day.add(worker(who, new Random(seeds.nextLong()))));
        judges.forEach(who -> day.add(judge(who, new Random(seeds.nextLong()))));
        day.add(watcher(new Random(seeds.nextLong())));
        ExecutorService all = Executors.newFixedThreadPool(day.size());
        try {
            for (Future<Void> one : all.invokeAll(day)) {
                one.get();
            }
        } finally {
            all.shutdownNow();
        }
        for (ApiDesk desk : desks) {
            assertTodayIsRight(desk.number);
        }
        System.out.printf(
                "A day of %d people and %d tickets (seed %d): %d acts recorded, %d turned back, %d decided on Today, %d comparisons, %d s%n",
                workers.size() + judges.size(),
                desks.size(),
                seed,
                recorded.get(),
                turnedBack.get(),
                decided.get(),
                compared.get(),
                TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - began));
        assertTrue(decided.get() > 0, "nothing was decided on Today");
    }

    /** Kinds of facts that stand after one entry and up to another, as the answer said. */
    private record Acknowledged(int after, int last, List<String> facts) {}

    private Callable<Void> worker(String who, Random random) {
        return () -> {
            try {
                for (int i = 0; i * workers.size() < TICKETS; i++) {
                    works(who, random);
                }
            } finally {
                working.decrementAndGet();
            }
            return null;
        };
    }

    /** From report to closure or as far as others let it come. */
    private void works(String who, Random random) {
        ApiDesk desk = shop.desk(who);
        desks.add(desk);
        List<Acknowledged> said = new ArrayList<>();
        acts(desk, said, ApiDesk.IDENTIFIED);
        sometimes(random, desk, said, ApiDesk.ADVANCE, ApiDesk.ADVANCE);
        sometimes(random, desk, said, "{\"kind\":\"asked\",\"what\":\"MENTOR\",\"note\":\"Which fuse?\"}");
        sometimes(random, desk, said, AttackSite.offered(workers.get(random.nextInt(workers.size()))));
        sometimes(
                random,
                desk,
                said,
                "{\"kind\":\"held\",\"waitingFor\":\"PART\",\"followUp\":\"2031-05-05T08:00:00Z\",\"note\":\"Ordered\"}",
                "{\"kind\":\"resumed\"}");
        acts(desk, said, ApiDesk.ADVANCE);
        acts(desk, said, ApiDesk.OBVIOUS);
        int theory = acts(desk, said, "{\"kind\":\"theory-stated\",\"text\":\"Clogged cooler\"}");
        acts(desk, said, "{\"kind\":\"theory-chosen\",\"theory\":" + theory + "}", ApiDesk.ADVANCE);
        int check = acts(desk, said, AttackSite.check(theory, "Open it", "Dust between the fins"));
        acts(desk, said, AttackSite.result(check, random.nextInt(4) == 0 ? "REFUTES" : "SUPPORTS"));
        acts(desk, said, ApiDesk.ADVANCE);
        acts(
                desk,
                said,
                AttackSite.action(
                        "Fit another cooler",
                        "\"irreversible\":false",
                        "\"touchesStorage\":false",
                        "\"usesPart\":false",
                        "\"cost\":\"900\""),
                "{\"kind\":\"asked\",\"what\":\"APPROVAL\",\"note\":\"Before noon\"}");
        List<String> trail = trail(desk);
        for (Acknowledged one : said) {
            String kept = String.join("", trail.subList(one.after(), one.last()));
            one.facts()
                    .forEach(kind -> assertTrue(
                            kept.contains("\"" + kind + "\""),
                            () -> kind + " of " + desk.number + " was acknowledged and is not there: " + kept));
        }
    }

    private void sometimes(Random random, ApiDesk desk, List<Acknowledged> said, String... facts) {
        if (random.nextBoolean()) {
            acts(desk, said, facts);
        }
    }

    /**
     * Does it, whoever was quicker meanwhile; whoever lost the ticket meanwhile is turned back.
     *
     * @param said gets what was acknowledged
     * @return number of the last entry
     */
    private int acts(ApiDesk desk, List<Acknowledged> said, String... facts) {
        for (int tries = 0; ; tries++) {
            int version = desk.sheet().getInt("version");
            Response answer = desk.sends(desk.who, version, "[" + String.join(",", facts) + "]");
            if (answer.statusCode() == 200) {
                int last = answer.jsonPath().getInt("version");
                List<String> kinds = Stream.of(facts)
                        .map(fact -> fact.replaceAll("^\\{\"kind\":\"([^\"]*)\".*", "$1"))
                        .toList();
                said.add(new Acknowledged(version, last, kinds));
                recorded.addAndGet(facts.length);
                return last;
            }
            assertTrue(List.of(403, 409, 412, 422).contains(answer.statusCode()), answer::asString);
            if (tries == 3 || answer.statusCode() != 412) {
                turnedBack.incrementAndGet();
                return version;
            }
        }
    }

    private List<String> trail(ApiDesk desk) {
        return desk.trail().stream().map(Object::toString).toList();
    }

    /** Somebody who decides on Today whatever stands there, as long as others work. */
    private Callable<Void> judge(String who, Random random) {
        return () -> {
            Browser browser = Browser.signedIn(who, PASSWORD);
            while (working.get() > 0) {
                List<FormElement> forms = Html.read(browser.get("/today").asString())
                        .select(".decide form[method=post]")
                        .forms();
                if (!forms.isEmpty()) {
                    decides(browser, forms.get(random.nextInt(forms.size())));
                }
                thinks(random);
            }
            return null;
        };
    }

    /** The more people, the longer, so that those who only look leave the server to those who work. */
    private static void thinks(Random random) throws InterruptedException {
        TimeUnit.MILLISECONDS.sleep(random.nextInt(20 * PEOPLE));
    }

    private void decides(Browser browser, FormElement form) {
        Map<String, String> fields = new HashMap<>();
        form.formData().forEach(f -> fields.put(f.key(), f.value().isEmpty() ? "Seen and thought about" : f.value()));
        Element button = form.selectFirst("button[name]");
        if (button != null) {
            fields.put(button.attr("name"), button.attr("value"));
        }
        fields.remove("csrf-token");
        Response answer = browser.post(form.attr("action"), fields);
        assertTrue(List.of(303, 409, 422).contains(answer.statusCode()), () -> form.attr("action") + answer.asString());
        if (answer.statusCode() == 303) {
            decided.incrementAndGet();
        }
    }

    private Callable<Void> watcher(Random random) {
        return () -> {
            while (working.get() > 0) {
                List<ApiDesk> open = List.copyOf(desks);
                if (!open.isEmpty()) {
                    assertTodayIsRight(open.get(random.nextInt(open.size())).number);
                    compared.incrementAndGet();
                }
                thinks(random);
            }
            return null;
        };
    }

    /** What is kept of what waits, against what follows from the trail at the same moment. */
    private void assertTodayIsRight(String number) {
        TicketNumber ticket = TicketNumber.parse(number);
        QuarkusTransaction.requiringNew().run(() -> {
            JobSheet sheet = tickets.locked(ticket).orElseThrow(() -> new AssertionError(number + " does not hold"));
            assertEquals(
                    Waits.of(sheet, site.policy()).stream()
                            .map(w -> w.kind() + " " + w.entry() + " " + w.account() + " " + w.supervisors() + " "
                                    + w.mentors() + " " + w.asker())
                            .collect(Collectors.toCollection(TreeSet::new)),
                    new TreeSet<>(kept(ticket)),
                    number);
        });
    }

    private List<String> kept(TicketNumber ticket) {
        return database.createNativeQuery(
                        "select kind || ' ' || entry || ' ' || coalesce(account, 'null') || ' ' || supervisors::text || ' ' ||"
                                + " mentors::text || ' ' || asker from ticket_wait where ticket = :ticket",
                        String.class)
                .setParameter("ticket", ticket.serial())
                .getResultList();
    }
}
