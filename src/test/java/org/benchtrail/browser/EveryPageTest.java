package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.MarkKind;
import org.benchtrail.core.method.identify.PictureMarked;
import org.benchtrail.demo.DemoStart;
import org.benchtrail.demo.Scenarios;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.attachment.AttachmentActs;
import org.benchtrail.ticket.attachment.CameraPictures;
import org.benchtrail.ticket.attachment.NewFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every page that somebody comes to by links alone, looked at by day and at night, wide, narrow and printed. With all demo tickets
 * and five people it takes minutes, so it is run on request: {@code -Dpages.all=true}, with {@code -Dpictures=true} for pictures.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@EnabledIfSystemProperty(
        named = "pages.all",
        matches = "true",
        disabledReason = "looking at every page takes minutes: -Dpages.all=true")
class EveryPageTest {
    /** Of pages that differ only in what they are about so many are looked at; of tickets, which differ by step, more. */
    private static final int OF_A_KIND = 1;

    private static final int TICKETS = 6;

    private static final Actor INES = new Actor("ines", "Ines Harrow", Set.of(Role.TECHNICIAN));

    @TestHTTPResource("/")
    URL server;

    @Inject
    DemoStart demo;

    @Inject
    PeopleActs accounts;

    @Inject
    TicketActs tickets;

    @Inject
    AttachmentActs files;

    private String pictured = "";

    @BeforeEach
    void load() throws IOException {
        DemoPeople.ensure(accounts);
        demo.load();
        pictured = "/tickets/" + pictured();
    }

    /** A ticket with a marked picture; the demo has none. */
    private TicketNumber pictured() {
        NewTicket report = new NewTicket(
                "Fan rattles",
                "",
                Category.HEAT,
                "desktop DT-31",
                "Larkfield Surveyors, reception",
                "A. Moss",
                "extension 200",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        TicketNumber number = tickets.open(report, INES).number();
        byte[] photo = CameraPictures.taken(CameraPictures.picture("jpg", 1200, 800), "2026:11:20 08:15:00", "");
        int picture = files.attach(number, 1, new NewFile("fan.jpg", "image/jpeg", photo, "The fan"), INES)
                .sheet()
                .entries();
        Act marked = sheet -> new PictureMarked(picture, MarkKind.CIRCLE, 200, 200, 600, 700, "Broken blade");
        tickets.perform(number, picture, List.of(marked), INES);
        return number;
    }

    @ParameterizedTest
    @ValueSource(strings = {"ines", "tomasz", "ruth", "omar", "lena"})
    void everyPage_isFitForEverybody(String login) {
        List<String> wrong = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        Map<String, Integer> ofAKind = new HashMap<>();
        Deque<String> open = new ArrayDeque<>(List.of("/", pictured));
        try (Person person = new Person(server.toString()).signIn(login, Scenarios.DEMO_PASSWORD)) {
            while (!open.isEmpty()) {
                String path = open.poll();
                String kind = kind(path);
                int most = kind.equals("/tickets/_") ? TICKETS : OF_A_KIND;
                if (!seen.add(path) || ofAKind.merge(kind, 1, Integer::sum) > most) {
                    continue;
                }
                if (!person.goesToAPage(path)) {
                    continue;
                }
                try {
                    person.lookInEveryWay(login + kind.replace('/', '-') + "-" + ofAKind.get(kind));
                } catch (AssertionError e) {
                    wrong.add(path + ": " + e.getMessage());
                }
                open.addAll(person.links());
            }
        }
        System.out.println(
                login + " looked at " + ofAKind.size() + " kinds of pages: " + String.join(" ", ofAKind.keySet()));
        assertTrue(ofAKind.size() > 10, "the links lead on");
        assertEquals(List.of(), wrong);
    }

    /** The address without what it is about. */
    private static String kind(String path) {
        return path.replaceAll("\\?.*", "")
                .replaceAll("/[^/]*\\d[^/]*", "/_")
                .replaceAll("^/(devices|known-causes|people|places|bench)/[^/]+", "/$1/_");
    }
}
