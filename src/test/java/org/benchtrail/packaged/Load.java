package org.benchtrail.packaged;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A few programs as the README describes one, each on a ticket of its own and then on the next one, without an end: every act is sent
 * under a key, and the same again until it is answered, and so they act on whatever server and database there are.
 */
final class Load implements AutoCloseable {
    private static final int ACTS_OF_A_TICKET = 20;
    private static final int REST_MS = 15;
    private static final int LONG_REST_MS = 400;
    private static final int AGAIN_MS = 100;
    private static final String WORDS = " of the load";

    /** What was acknowledged: the opening of a ticket, without a text, or an act on it. */
    record Acknowledged(String ticket, int entry, String text) {}

    /**
     * What is there of what was acknowledged.
     *
     * @param lost acknowledged and not there
     * @param twice there more than once, or there and never acknowledged
     * @param broken tickets whose trail does not verify
     */
    record Found(int acknowledged, List<String> lost, List<String> twice, List<String> broken) {
        void requireWhole() {
            if (!lost.isEmpty() || !twice.isEmpty() || !broken.isEmpty()) {
                throw new AssertionError(this.toString());
            }
        }
    }

    private final Visitor visitor;
    private final List<Program> programs = new ArrayList<>();
    private final Queue<Acknowledged> acknowledged = new ConcurrentLinkedQueue<>();
    private final Map<String, AtomicInteger> answers = new ConcurrentHashMap<>();
    private final AtomicLong longestMs = new AtomicLong();
    private final AtomicInteger mostRepeats = new AtomicInteger();
    private volatile boolean ended;
    private volatile int rest = REST_MS;
    private volatile String wrong = "";

    Load(Visitor visitor, int programs) {
        this.visitor = visitor;
        for (int i = 0; i < programs; i++) {
            this.programs.add(new Program("program " + UUID.randomUUID()));
        }
    }

    /** Somebody of the demo, by a token. */
    static Visitor token(RunningServer server) throws IOException, InterruptedException {
        Visitor browser = new Visitor(server.address());
        if (browser.signIn("ruth", "benchtrail-demo") != 303) {
            throw new AssertionError("not signed in");
        }
        return Visitor.withToken(server.address(), browser.makeToken("benchtrail-demo"));
    }

    void start() {
        programs.forEach(program -> program.thread.start());
    }

    private final class Program {
        private final String name;
        private final Thread thread;
        private final AtomicInteger done = new AtomicInteger();

        private Program(String name) {
            this.name = name;
            this.thread = new Thread(this::work, name);
        }

        private void work() {
            try {
                while (!ended) {
                    JsonNode sheet = send("/api/tickets", 0, Crowd.report(name + " at " + done));
                    String ticket = sheet.path("number").asText();
                    int version = sheet.path("version").asInt();
                    acknowledged.add(new Acknowledged(ticket, 1, ""));
                    for (int i = 0; i < ACTS_OF_A_TICKET && !ended; i++) {
                        String text = "Act " + done.incrementAndGet() + WORDS;
                        version = send("/api/tickets/" + ticket + "/acts", version, Crowd.symptom(text))
                                .path("version")
                                .asInt();
                        acknowledged.add(new Acknowledged(ticket, version, text));
                        Thread.sleep(rest);
                    }
                }
            } catch (IOException | RuntimeException e) {
                wrong = e.toString();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private JsonNode send(String path, int version, Map<String, ?> body) throws IOException, InterruptedException {
        String key = UUID.randomUUID().toString();
        long begun = System.nanoTime();
        for (int repeats = 0; ; repeats++) {
            mostRepeats.accumulateAndGet(repeats, Math::max);
            try {
                HttpResponse<String> answer = visitor.post(path, version, body, key);
                if (answer.statusCode() / 100 == 2) {
                    longestMs.accumulateAndGet((System.nanoTime() - begun) / 1_000_000, Math::max);
                    return Visitor.json(answer);
                }
                if (answer.statusCode() < 500) {
                    throw new IllegalStateException(path + ": " + answer.statusCode() + " " + answer.body());
                }
                count(Visitor.kind(answer));
            } catch (IOException broken) {
                count("no answer");
            }
            Thread.sleep(AGAIN_MS);
        }
    }

    private void count(String answer) {
        answers.computeIfAbsent(answer, a -> new AtomicInteger()).incrementAndGet();
    }

    /** Few acts, so that whoever starts beside them has the machine. */
    void calm() {
        rest = LONG_REST_MS;
    }

    /** As many as the machine takes. */
    void hurry() {
        rest = REST_MS;
    }

    /**
     * Waits until each program has so many more acknowledged; answers with the longest that one took since this was last asked, in
     * ms. An act that was under way counts when it is acknowledged.
     */
    long more(int acts) throws InterruptedException {
        for (Program program : programs) {
            int until = program.done.get() + acts + 1;
            while (program.done.get() < until) {
                requireGoingOn();
                Thread.sleep(REST_MS);
            }
        }
        return longestMs.getAndSet(0);
    }

    void requireGoingOn() {
        if (!wrong.isEmpty()) {
            throw new AssertionError(wrong);
        }
    }

    /** How many were acknowledged so far. */
    int size() {
        return acknowledged.size();
    }

    /** What made something be sent again, and how often. */
    Map<String, AtomicInteger> answers() {
        return new TreeMap<>(answers);
    }

    /** How often something had to be sent again. */
    int again() {
        return answers.values().stream().mapToInt(AtomicInteger::get).sum();
    }

    /** How often the same one had to be sent again, at most. */
    int mostRepeats() {
        return mostRepeats.get();
    }

    /** Holds what was acknowledged against what a server has; after the end. */
    Found found(Visitor reader) throws IOException, InterruptedException {
        Map<String, Map<Integer, String>> byTicket = new TreeMap<>();
        acknowledged.forEach(one ->
                byTicket.computeIfAbsent(one.ticket, t -> new HashMap<>()).put(one.entry, one.text));
        List<String> lost = new ArrayList<>();
        List<String> twice = new ArrayList<>();
        List<String> broken = new ArrayList<>();
        for (Map.Entry<String, Map<Integer, String>> ticket : byTicket.entrySet()) {
            Map<Integer, String> left = ticket.getValue();
            left.remove(1);
            for (JsonNode fact : reader.read("/api/tickets/" + ticket.getKey()).get("facts")) {
                String text = fact.at("/fact/observable").asText();
                int entry = fact.get("entry").asInt();
                if (text.endsWith(WORDS) && !left.remove(entry, text)) {
                    twice.add(ticket.getKey() + "/" + entry + " " + text);
                }
            }
            left.forEach((entry, text) -> lost.add(ticket.getKey() + "/" + entry + " " + text));
            if (!reader.read("/api/tickets/" + ticket.getKey() + "/trail/verification")
                    .get("holds")
                    .asBoolean()) {
                broken.add(ticket.getKey());
            }
        }
        return new Found(size(), lost, twice, broken);
    }

    /** Every entry that the server acknowledged has a leaf. */
    void requireSealed(ShopDatabase database) throws SQLException {
        Set<String> leaves = new HashSet<>();
        database.rows("select substr(stream, 8) || '/' || place from seal_leaf where stream like 'ticket/%'")
                .forEach(row -> leaves.add(row.get(0)));
        List<String> missing = new ArrayList<>();
        acknowledged.forEach(one -> missing.add(one.ticket + "/" + one.entry));
        missing.removeAll(leaves);
        if (!missing.isEmpty()) {
            throw new AssertionError("acknowledged and not sealed: " + missing);
        }
    }

    /** Lets what is under way be acknowledged, and begins nothing more. */
    @Override
    public void close() throws InterruptedException {
        ended = true;
        for (Program program : programs) {
            program.thread.join();
        }
        requireGoingOn();
    }
}
