package org.benchtrail.webhook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpServer;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.benchtrail.core.integrity.MessageSignature;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.SealRounds;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A program that is told of changes: all of them, in their order, signed, and again until it takes them. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class WebhookTest {
    private static final Actor WENDA =
            new Actor("hook-wenda", "Wenda Example", Set.of(Role.TECHNICIAN, Role.SUPERVISOR));
    private static final String PASSWORD = "a long enough password";
    private static final byte[] SECRET = MessageSignature.secret("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw");
    private static int receivers;

    @Inject
    WebhookJob job;

    @Inject
    WebhookRows rows;

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    MovedClock clock;

    @Inject
    ObjectMapper json;

    private record Message(String id, String time, String signature, String body) {}

    private final List<Message> got = new CopyOnWriteArrayList<>();
    private volatile int status = 204;
    private HttpServer server;
    private Receiver receiver;

    @BeforeEach
    void begin() throws IOException {
        people.ensureAccount(WENDA.account(), WENDA.name(), WENDA.roles(), PASSWORD);
        server = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
        server.createContext("/in", exchange -> {
            var headers = exchange.getRequestHeaders();
            String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            got.add(new Message(
                    headers.getFirst("webhook-id"),
                    headers.getFirst("webhook-timestamp"),
                    headers.getFirst("webhook-signature"),
                    body));
            exchange.getResponseHeaders().add("Location", "/elsewhere");
            exchange.sendResponseHeaders(status, -1);
            exchange.close();
        });
        server.createContext("/elsewhere", exchange -> {
            got.add(new Message("", "", "", "was sent elsewhere"));
            exchange.sendResponseHeaders(204, -1);
            exchange.close();
        });
        server.start();
        receiver = new Receiver(
                "hook-" + receivers++,
                URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/in?key=in-the-query"),
                SECRET);
        SealRounds.once();
        job.tell(receiver);
        assertEquals(List.of(), got, "it begins with what happens from now on");
    }

    @AfterEach
    void end() {
        server.stop(0);
        clock.putRight();
    }

    private TicketNumber ticket() {
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                "Rae",
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        return tickets.open(report, WENDA).number();
    }

    private List<String> told() throws IOException {
        List<String> entries = new ArrayList<>();
        for (Message message : got) {
            for (JsonNode change : json.readTree(message.body()).get("changes")) {
                entries.add(change.get("ticket").asText() + " "
                        + change.get("entry").asInt());
            }
        }
        return entries;
    }

    @Test
    void changes_areToldOnce_inOrder_signed_andNothingThatWasTyped() throws IOException {
        TicketNumber first = ticket();
        TicketNumber second = ticket();
        SealRounds.once();
        job.tell(receiver);
        job.tell(receiver);
        assertEquals(List.of(first + " 1", second + " 1"), told());
        assertEquals(2, json.readTree(got.get(0).body()).size(), "changes and next, as the API gives them");
        Message message = got.get(0);
        assertEquals(
                MessageSignature.of(SECRET, message.id(), Long.parseLong(message.time()), message.body()),
                message.signature());
        assertFalse(message.body().contains("rattles"), message.body());
    }

    @Test
    void whatIsNotTaken_comesAgain_theSame_andNotBeforeItsTime() throws IOException {
        TicketNumber number = ticket();
        SealRounds.once();
        status = 500;
        job.tell(receiver);
        job.tell(receiver);
        assertEquals(1, got.size(), "it is left alone for a while");
        clock.putForward(Duration.ofSeconds(2));
        status = 302;
        job.tell(receiver);
        assertEquals(2, got.size(), "a redirect is not followed, and is no answer");
        clock.putForward(Duration.ofSeconds(4));
        status = 204;
        job.tell(receiver);
        assertEquals(List.of(number + " 1", number + " 1", number + " 1"), told());
        assertEquals(got.get(0).body(), got.get(2).body());
        assertEquals(got.get(0).id(), got.get(2).id());
        clock.putForward(Duration.ofHours(1));
        job.tell(receiver);
        assertEquals(3, got.size());
    }

    @Test
    void nobodyThere_isKept_andTriedAgain() {
        ticket();
        SealRounds.once();
        server.stop(0);
        job.tell(receiver);
        WebhookRows.State state = state();
        assertEquals(1, state.failures());
        assertTrue(state.answer().startsWith("no answer"), state.answer());
        assertTrue(state.next() < state.size());
    }

    private WebhookRows.State state() {
        return QuarkusTransaction.requiringNew().call(rows::all).stream()
                .filter(s -> s.name().equals(receiver.name()))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whileAnotherServerTellsIt_thisOneDoesNot_untilItsClaimEnds() {
        ticket();
        SealRounds.once();
        TestDatabase.run(
                "update webhook set not_before = now() + interval '50 seconds' where name = ?", receiver.name());
        job.tell(receiver);
        assertEquals(List.of(), got);
        clock.putForward(Duration.ofSeconds(61));
        job.tell(receiver);
        assertEquals(1, got.size());
    }

    @Test
    void moreThanOneMessageHolds_comesInSeveral() throws IOException {
        List<String> opened = new ArrayList<>();
        for (int i = 0; i < 101; i++) {
            opened.add(ticket() + " 1");
        }
        SealRounds.once();
        job.tell(receiver);
        assertEquals(2, got.size());
        assertEquals(opened, told());
    }

    @Test
    void page_showsHowEachStands_andNoSecret() {
        ticket();
        SealRounds.once();
        status = 503;
        job.tell(receiver);
        String page =
                Browser.signedIn(WENDA.account(), PASSWORD).get("/webhooks").asString();
        assertTrue(page.contains(receiver.name()) && page.contains("▲ 503"), page);
        assertTrue(page.contains("not in this server's settings"), page);
        assertFalse(page.contains("in-the-query"), page);
    }

    @Test
    void pauses_double_upToFiveMinutes() {
        assertEquals(
                List.of(1L, 2L, 4L, 256L, 300L, 300L),
                List.of(1, 2, 3, 9, 10, 1_000).stream()
                        .map(f -> WebhookJob.pause(f).toSeconds())
                        .toList());
    }
}
