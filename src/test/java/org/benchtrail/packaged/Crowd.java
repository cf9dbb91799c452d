package org.benchtrail.packaged;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Random;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/** Twenty programs that act on twenty tickets at once, and what the server acknowledged to them. */
final class Crowd {
    static final int TICKETS = 20;
    static final int ACTS = 200;
    private static final int THREADS = 20;
    private static final int SEED = 40718;
    private static final int MOST_TRIES = 100;
    private static final int PATIENCE_SECONDS = 120;

    /** An act that the server has answered with 200. */
    record Acknowledged(String ticket, int entry, String text) {}

    private final Visitor visitor;
    private final List<String> tickets = new ArrayList<>();
    private final Queue<Acknowledged> acknowledged = new ConcurrentLinkedQueue<>();
    private final AtomicInteger stale = new AtomicInteger();
    private final AtomicInteger lost = new AtomicInteger();

    Crowd(Visitor visitor) throws IOException, InterruptedException {
        this.visitor = visitor;
        for (int i = 0; i < TICKETS; i++) {
            HttpResponse<String> opened = visitor.post("/api/tickets", report("desk " + i));
            if (opened.statusCode() != 201) {
                throw new AssertionError("not opened: " + opened.statusCode() + "\n" + opened.body());
            }
            tickets.add(Visitor.json(opened).get("number").asText());
        }
    }

    /** Lets all act, and does something to the server once so many acts are acknowledged; returns when the last has given up. */
    void actUntil(int enough, Blow blow) throws IOException, InterruptedException {
        CountDownLatch latch = new CountDownLatch(enough);
        ExecutorService pool = Executors.newFixedThreadPool(THREADS);
        try {
            Random random = new Random(SEED);
            for (int i = 0; i < ACTS; i++) {
                String ticket = tickets.get(random.nextInt(TICKETS));
                String text = "Act " + i + " of the crowd";
                pool.execute(() -> act(ticket, text, latch));
            }
            if (!latch.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                throw new AssertionError("only " + acknowledged.size() + " acts were acknowledged, " + lost + " lost");
            }
            blow.strike();
        } finally {
            pool.shutdown();
            if (!pool.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                pool.shutdownNow();
            }
        }
    }

    /** What happens to the server. */
    interface Blow {
        void strike() throws IOException, InterruptedException;
    }

    List<String> tickets() {
        return tickets;
    }

    List<Acknowledged> acknowledged() {
        return List.copyOf(acknowledged);
    }

    /** How often an act had to be tried again because somebody else had acted meanwhile. */
    int stale() {
        return stale.get();
    }

    /** How many acts got no answer, or another than 200. */
    int lost() {
        return lost.get();
    }

    private void act(String ticket, String text, CountDownLatch latch) {
        try {
            JsonNode sheet = tryUntilDone(ticket, text);
            acknowledged.add(new Acknowledged(ticket, sheet.get("version").asInt(), text));
            latch.countDown();
        } catch (IOException | AssertionError e) {
            lost.incrementAndGet();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private JsonNode tryUntilDone(String ticket, String text) throws IOException, InterruptedException {
        for (int i = 0; i < MOST_TRIES; i++) {
            int version = visitor.read("/api/tickets/" + ticket).get("version").asInt();
            HttpResponse<String> answer = visitor.post("/api/tickets/" + ticket + "/acts", version, symptom(text));
            if (answer.statusCode() == 200) {
                return Visitor.json(answer);
            }
            if (answer.statusCode() != 412) {
                throw new IOException("answered " + answer.statusCode());
            }
            stale.incrementAndGet();
        }
        throw new IOException("somebody else was always quicker");
    }

    static Map<String, ?> symptom(String text) {
        return Map.of("kind", "symptom-recorded", "words", text, "observable", text);
    }

    static Map<String, ?> report(String where) {
        return Map.of(
                "title",
                "Screen flickers at " + where,
                "category",
                "DISPLAY",
                "device",
                "screen at " + where,
                "place",
                "Wexcombe Printworks",
                "requester",
                "P. Okon",
                "contact",
                "extension 12",
                "impact",
                "ONE_PERSON",
                "urgency",
                "HINDERED");
    }
}
