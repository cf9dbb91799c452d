package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * How fast the packaged server is over many invented tickets, in a process of its own, with everything that asks it on the same
 * machine. No part of any other build:
 *
 * <pre>mvn -P load verify -Dload.tickets=1000000</pre>
 *
 * It fails where something is answered wrongly, never because it is slow: how slow it may be hangs on the machine.
 */
class SpeedProfile {
    private static final int TICKETS = Integer.getInteger("load.tickets", 1_000_000);
    private static final int SECONDS = Integer.getInteger("load.seconds", 10);
    private static final int GROWTH_STEPS = 3;
    private static final int GROWTH = 10;
    private static final int CLIENTS = 16;
    private static final int ACTS_OF_A_TICKET = 20;
    private static final int TICKETS_BESIDE = 300;
    private static final int LONG_TRAIL = 3000;
    private static final int TOGETHER = 50;
    private static final String PASSWORD = "benchtrail-demo";

    private final SpeedTable table = new SpeedTable();
    private final List<Visitor> programs = new ArrayList<>();
    private final List<Visitor> browsers = new ArrayList<>();

    /** Pages by what they are called in the tables. */
    private final Map<String, String> pages = new LinkedHashMap<>();

    private static HttpResponse<String> require(int status, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), () -> answer.uri() + " answered " + answer.body());
        return answer;
    }

    private static SpeedClients.Task page(Visitor visitor, String address) {
        return SpeedClients.timed(() -> require(200, visitor.get(address)));
    }

    /** A ticket of its own, and the next one before its trail grows long; opening is not timed. */
    private final class Acting implements SpeedClients.Task {
        private final Visitor program;
        private final int most;
        private final boolean small;
        private String ticket = "";
        private int version;
        private int acts;

        Acting(Visitor program, int most) {
            this(program, most, false);
        }

        /**
         * @param small whether an act is to be answered without the sheet
         */
        Acting(Visitor program, int most, boolean small) {
            this.program = program;
            this.most = most;
            this.small = small;
        }

        void open() throws IOException, InterruptedException {
            var sheet = Visitor.json(require(201, program.post("/api/tickets", Crowd.report("Ticket of a program"))));
            ticket = sheet.path("number").asText();
            version = sheet.path("version").asInt();
            acts = 0;
        }

        /** Several in one go, until there are so many entries. */
        void grow(int entries) throws IOException, InterruptedException {
            while (version < entries) {
                send(Collections.nCopies(Math.min(TOGETHER, entries - version), Crowd.symptom("Flickers again")));
            }
        }

        private void send(Object body) throws IOException, InterruptedException {
            HttpResponse<String> answer = program.post("/api/tickets/" + ticket + "/acts", version, body);
            version = Visitor.json(require(200, answer)).path("version").asInt();
        }

        @Override
        public long once() throws IOException, InterruptedException {
            if (ticket.isEmpty() || acts == most) {
                open();
            }
            acts++;
            Map<String, ?> act = Crowd.symptom("Act " + acts);
            long begun = System.nanoTime();
            if (small) {
                require(204, program.postForVersion("/api/tickets/" + ticket + "/acts", version, act));
                version++;
            } else {
                send(act);
            }
            return System.nanoTime() - begun;
        }
    }

    @Test
    void speed() throws Exception {
        starts();
        try (ShopDatabase database = new ShopDatabase("speed");
                RunningServer server = serve(database)) {
            signIn(server);
            SpeedData data = new SpeedData();
            for (int size : sizes()) {
                long begun = System.nanoTime();
                try (Connection owner = database.owner()) {
                    data.grow(owner, size);
                }
                System.out.printf("%,d tickets were there after %.1f s%n", size, seconds(begun));
                growth(size);
            }
            SpeedFigures bare = bare();
            acts(database);
            longTrail();
            pages(bare);
        }
        try (ShopDatabase database = ShopDatabase.again("speed")) {
            long begun = System.nanoTime();
            try (RunningServer server = serve(database)) {
                require(200, new Visitor(server.address()).get("/sign-in"));
                table.once("start to first page, these tickets", seconds(begun) * 1000, "4000 ms");
            }
        }
        String text =
                table.text(TICKETS, "Ratio: acts a second to those of pgbench; pages, p95 to that of the bare page.\n");
        System.out.println(text);
        Files.writeString(Path.of("target", "speed.txt"), text, StandardCharsets.UTF_8);
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }

    private static List<Integer> sizes() {
        List<Integer> sizes = new ArrayList<>();
        for (int i = 0, size = TICKETS; i < GROWTH_STEPS; i++, size /= GROWTH) {
            sizes.add(0, size);
        }
        return sizes;
    }

    private static RunningServer serve(ShopDatabase database) throws IOException, InterruptedException {
        Path folder = PackagedJar.folder("speed-server");
        return RunningServer.start(
                folder,
                database.environment(),
                List.of("benchtrail.demo=true", "benchtrail.sign-in.second-factor-for-administrators=false"));
    }

    /** With the server's own PostgreSQL: nothing there at all, and then what the demo left. */
    private void starts() throws IOException, InterruptedException {
        Path folder = PackagedJar.folder("speed-start");
        for (String what : List.of("start to first page, new", "start to first page, data present")) {
            long begun = System.nanoTime();
            try (RunningServer server = RunningServer.demo(folder)) {
                require(200, new Visitor(server.address()).get("/sign-in"));
                table.once(what, seconds(begun) * 1000, what.endsWith("new") ? "10000 ms" : "4000 ms");
            }
        }
    }

    private void signIn(RunningServer server) throws IOException, InterruptedException {
        Visitor first = new Visitor(server.address());
        assertEquals(303, first.signIn("ruth", PASSWORD));
        String token = first.makeToken(PASSWORD);
        for (int i = 0; i < CLIENTS; i++) {
            programs.add(Visitor.withToken(server.address(), token));
            Visitor browser = i == 0 ? first : new Visitor(server.address());
            if (i > 0) {
                assertEquals(303, browser.signIn("ruth", PASSWORD));
            }
            browsers.add(browser);
        }
        Acting identify = new Acting(programs.get(0), ACTS_OF_A_TICKET);
        identify.open();
        pages.put("job sheet in identify", "/tickets/" + identify.ticket);
        pages.put("job sheet at test", "/tickets/" + ticketAt("TEST"));
        pages.put("job sheet at plan", "/tickets/" + ticketAt("PLAN"));
        pages.put("New ticket page", "/new-ticket");
        pages.put(
                "likeness while typing",
                "/new-ticket/alike?title=common1+usual55+seldom17&device=device+17&category=HEAT");
        pages.put("queue, open", "/queue");
        pages.put("queue, closed", "/queue?standing=CLOSED");
        pages.put("queue, open, with words", "/queue?text=common1+usual55");
        pages.put("queue, closed, with words", "/queue?standing=CLOSED&text=common1+usual55");
        pages.put("search", "/search?q=common1+usual55");
    }

    private String ticketAt(String step) throws IOException, InterruptedException {
        return programs.get(0)
                .read("/api/tickets?step=" + step)
                .path("tickets")
                .path(0)
                .path("number")
                .asText();
    }

    private void growth(int size) throws InterruptedException {
        for (Map.Entry<String, String> one : pages.entrySet()) {
            table.grown(
                    one.getKey(),
                    size,
                    SpeedClients.run(List.of(page(browsers.get(0), one.getValue())), Math.max(1, SECONDS / 4)));
        }
        table.grown(
                "act, one client",
                size,
                SpeedClients.run(List.of(new Acting(programs.get(0), ACTS_OF_A_TICKET)), Math.max(1, SECONDS / 4)));
    }

    private SpeedFigures bare() throws InterruptedException {
        SpeedFigures alone = SpeedClients.run(List.of(page(browsers.get(0), "/keys")), SECONDS);
        table.add("bare page (keys), 1 client", alone, Double.NaN, "-");
        table.add("bare page (keys), 16 clients", all("/keys"), Double.NaN, "-");
        return alone;
    }

    private SpeedFigures all(String address) throws InterruptedException {
        return SpeedClients.run(browsers.stream().map(b -> page(b, address)).toList(), SECONDS);
    }

    private void acts(ShopDatabase database) throws Exception {
        SpeedFigures acts = acts(false);
        SpeedFigures small = acts(true);
        Acting opening = new Acting(programs.get(0), ACTS_OF_A_TICKET);
        for (int i = 0; i < TICKETS_BESIDE; i++) {
            opening.open();
        }
        double without = SpeedBench.perSecond(database, TICKETS_BESIDE, CLIENTS, SECONDS);
        table.add("act, 16 clients", acts, acts.perSecond() / without, "-");
        table.add("the same, answered without the sheet", small, small.perSecond() / without, "ratio 0.6");
        table.rate("the same statements by pgbench", without);
    }

    private SpeedFigures acts(boolean small) throws InterruptedException {
        return SpeedClients.run(
                programs.stream()
                        .map(p -> new Acting(p, ACTS_OF_A_TICKET, small))
                        .toList(),
                SECONDS);
    }

    private void longTrail() throws IOException, InterruptedException {
        for (boolean small : List.of(false, true)) {
            Acting acting = new Acting(programs.get(0), Integer.MAX_VALUE, small);
            acting.open();
            acting.grow(LONG_TRAIL);
            table.add(
                    "act on " + LONG_TRAIL + " entries, " + (small ? "without" : "with") + " the sheet",
                    SpeedClients.run(List.of(acting), SECONDS),
                    Double.NaN,
                    small ? "60 ms" : "-");
        }
    }

    private void pages(SpeedFigures bare) throws InterruptedException {
        for (Map.Entry<String, String> one : pages.entrySet()) {
            SpeedFigures alone = SpeedClients.run(List.of(page(browsers.get(0), one.getValue())), SECONDS);
            table.add(one.getKey(), alone, alone.percentile(95) / bare.percentile(95), "p95 50 ms");
            if (one.getKey().startsWith("job sheet")) {
                table.add(one.getKey() + ", 16 clients", all(one.getValue()), Double.NaN, "300 a second");
            }
        }
    }
}
