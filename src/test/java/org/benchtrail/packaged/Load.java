package org.benchtrail.packaged;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/** A few programs that act without an end, each on a ticket of its own and then on the next one. */
final class Load implements AutoCloseable {
    private static final int PROGRAMS = 2;
    private static final int ACTS_OF_A_TICKET = 20;
    private static final int REST_MS = 15;
    private static final int LONG_REST_MS = 400;
    private static final int PATIENCE_SECONDS = 60;

    private final Visitor visitor;
    private final ExecutorService pool = Executors.newFixedThreadPool(PROGRAMS);
    private final Queue<String> acknowledged = new ConcurrentLinkedQueue<>();
    private final Queue<String> wrong = new ConcurrentLinkedQueue<>();
    private volatile boolean ended;
    private volatile int rest = LONG_REST_MS;

    Load(Visitor visitor) {
        this.visitor = visitor;
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
        for (int i = 0; i < PROGRAMS; i++) {
            pool.execute(this::act);
        }
    }

    private void act() {
        try {
            while (!ended) {
                HttpResponse<String> opened = visitor.post("/api/tickets", Crowd.report(acknowledged.size()));
                JsonNode sheet = Visitor.json(opened);
                String ticket = sheet.get("number").asText();
                acknowledged.add(ticket + "/1");
                int version = sheet.get("version").asInt();
                for (int i = 0; i < ACTS_OF_A_TICKET && !ended; i++) {
                    HttpResponse<String> answer = visitor.post(
                            "/api/tickets/" + ticket + "/acts", version, Crowd.symptom("Act " + i + " of the load"));
                    if (answer.statusCode() != 200) {
                        throw new IOException("answered " + answer.statusCode());
                    }
                    version = Visitor.json(answer).get("version").asInt();
                    acknowledged.add(ticket + "/" + version);
                    Thread.sleep(rest);
                }
            }
        } catch (IOException | RuntimeException e) {
            wrong.add(e.toString());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Few acts, so that whoever starts beside them has the machine. */
    void calm() {
        rest = LONG_REST_MS;
    }

    /** As many as the machine takes. */
    void hurry() {
        rest = REST_MS;
    }

    int acknowledged() {
        return acknowledged.size();
    }

    void requireGoingOn() {
        if (!wrong.isEmpty()) {
            throw new AssertionError(wrong.toString());
        }
    }

    /** Every entry that the server acknowledged has a leaf. */
    void requireAcknowledgedIsThere(ShopDatabase database) throws SQLException {
        Set<String> leaves = new HashSet<>();
        database.rows("select substr(stream, 8) || '/' || place from seal_leaf where stream like 'ticket/%'")
                .forEach(row -> leaves.add(row.get(0)));
        List<String> missing = new ArrayList<>(acknowledged);
        missing.removeAll(leaves);
        if (!missing.isEmpty()) {
            throw new AssertionError("acknowledged and not sealed: " + missing);
        }
    }

    @Override
    public void close() throws InterruptedException {
        ended = true;
        pool.shutdown();
        pool.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
    }
}
