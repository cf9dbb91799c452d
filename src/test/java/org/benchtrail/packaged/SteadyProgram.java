package org.benchtrail.packaged;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * A program as the README describes one: it sends every act under a key, sends the same again until it is answered, and so acts on
 * whatever server and database there are.
 */
final class SteadyProgram implements AutoCloseable {
    private static final int ACTS_OF_A_TICKET = 20;
    private static final int REST_MS = 20;
    private static final int AGAIN_MS = 100;

    /** An act that was acknowledged. */
    record Acknowledged(String ticket, int entry, String text) {}

    private final Visitor visitor;
    private final Thread thread = new Thread(this::work, "steady program");
    private final Queue<Acknowledged> acknowledged = new ConcurrentLinkedQueue<>();
    private final Queue<String> tickets = new ConcurrentLinkedQueue<>();
    private volatile boolean ended;
    private volatile String wrong = "";
    private volatile long longestMs;
    private volatile int again;

    SteadyProgram(Visitor visitor) {
        this.visitor = visitor;
    }

    void start() {
        thread.start();
    }

    private void work() {
        try {
            while (!ended) {
                String ticket = send("/api/tickets", 0, Crowd.report(tickets.size()))
                        .path("number")
                        .asText();
                tickets.add(ticket);
                int version =
                        visitor.read("/api/tickets/" + ticket).path("version").asInt();
                for (int i = 0; i < ACTS_OF_A_TICKET && !ended; i++) {
                    String text = "Act " + acknowledged.size() + " of the steady program";
                    version = send("/api/tickets/" + ticket + "/acts", version, Crowd.symptom(text))
                            .path("version")
                            .asInt();
                    acknowledged.add(new Acknowledged(ticket, version, text));
                    Thread.sleep(REST_MS);
                }
            }
        } catch (IOException | RuntimeException e) {
            wrong = e.toString();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private JsonNode send(String path, int version, Map<String, ?> body) throws IOException, InterruptedException {
        String key = UUID.randomUUID().toString();
        long begun = System.nanoTime();
        while (true) {
            try {
                HttpResponse<String> answer = visitor.post(path, version, body, key);
                if (answer.statusCode() / 100 == 2) {
                    longestMs = Math.max(longestMs, (System.nanoTime() - begun) / 1_000_000);
                    return Visitor.json(answer);
                }
                if (answer.statusCode() < 500) {
                    throw new IllegalStateException(path + ": " + answer.statusCode() + " " + answer.body());
                }
            } catch (IOException broken) {
                // sent again under the same key
            }
            again++;
            Thread.sleep(AGAIN_MS);
        }
    }

    /** Waits until so many more are acknowledged; answers with the longest that one took since it was last asked, in ms. */
    long more(int acts) throws InterruptedException {
        int until = acknowledged.size() + acts;
        while (acknowledged.size() < until) {
            if (!wrong.isEmpty()) {
                throw new AssertionError(wrong);
            }
            Thread.sleep(REST_MS);
        }
        long longest = longestMs;
        longestMs = 0;
        return longest;
    }

    /** How often something had to be sent again. */
    int again() {
        return again;
    }

    List<Acknowledged> acknowledged() {
        return List.copyOf(acknowledged);
    }

    List<String> tickets() {
        return List.copyOf(tickets);
    }

    @Override
    public void close() throws InterruptedException {
        ended = true;
        thread.join();
        if (!wrong.isEmpty()) {
            throw new AssertionError(wrong);
        }
    }
}
