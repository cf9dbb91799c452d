package org.benchtrail.webhook;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.integrity.MessageSignature;
import org.benchtrail.platform.Rounds;
import org.benchtrail.seal.ChangeFeed;
import org.benchtrail.webhook.WebhookRows.Claim;
import org.jboss.logging.Logger;

/**
 * Posts the feed of changes to each receiver, in its order and signed, until the receiver has taken it: each change at least once, by
 * one server at a time. A receiver that does not answer, or not with 2xx, gets the same again after 1, 2, 4 ... 300 s.
 */
@ApplicationScoped
class WebhookJob {
    private static final Logger LOG = Logger.getLogger(WebhookJob.class);
    private static final Duration PATIENCE = Duration.ofSeconds(10);

    /** Longer than any message takes: the claim of a server that died ends by itself. */
    private static final Duration CLAIM = Duration.ofSeconds(60);

    private static final int AT_ONCE = 100;
    private static final int MOST_MESSAGES = 20;
    private static final int LONGEST_PAUSE_S = 300;
    private static final int SLOWEST_DOUBLING = 9;

    private final List<Receiver> receivers;
    private final WebhookConfig config;
    private final WebhookRows rows;
    private final ChangeFeed feed;
    private final ObjectMapper json;
    private final Clock clock;
    private final Rounds rounds = new Rounds("webhooks");
    private final HttpClient http = HttpClient.newBuilder()
            .connectTimeout(PATIENCE)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();

    WebhookJob(WebhookConfig config, WebhookRows rows, ChangeFeed feed, ObjectMapper json, Clock clock) {
        this.config = config;
        this.rows = rows;
        this.feed = feed;
        this.json = json;
        this.clock = clock;
        receivers = config.to().entrySet().stream()
                .map(to -> Receiver.of(to.getKey(), to.getValue()))
                .toList();
    }

    void start(@Observes StartupEvent start) {
        if (!receivers.isEmpty()) {
            rounds.begin(config.every(), () -> receivers.forEach(this::tell));
        }
    }

    void stop(@Observes ShutdownEvent stop) {
        rounds.end();
    }

    List<Receiver> receivers() {
        return receivers;
    }

    /** Tells one of what it does not know yet. What goes wrong here keeps no other from being told. */
    void tell(Receiver receiver) {
        try {
            Instant now = clock.instant();
            Optional<Claim> claim =
                    QuarkusTransaction.requiringNew().call(() -> rows.claim(receiver.name(), now, now.plus(CLAIM)));
            claim.ifPresent(claimed -> tellAll(receiver, claimed));
        } catch (RuntimeException e) {
            LOG.warnf(e, "webhook %s was not told; it is tried again", receiver.name());
        }
    }

    private void tellAll(Receiver receiver, Claim claimed) {
        Claim stands = claimed;
        for (int sent = 0; sent < MOST_MESSAGES; sent++) {
            ChangeFeed.Part part = feed.after(stands.next(), AT_ONCE);
            if (part.changes().isEmpty()) {
                stands = new Claim(stands.name(), part.next(), stands.failures());
                break;
            }
            String answer = send(receiver, stands.next(), part);
            boolean taken = answer.matches("2[0-9]{2}");
            stands = new Claim(stands.name(), taken ? part.next() : stands.next(), taken ? 0 : stands.failures() + 1);
            keep(stands, answer, taken ? CLAIM : pause(stands.failures()));
            if (!taken) {
                return;
            }
        }
        long next = stands.next();
        QuarkusTransaction.requiringNew().run(() -> rows.freed(receiver.name(), next, clock.instant()));
    }

    /** After so many refusals in a row. */
    static Duration pause(int failures) {
        return Duration.ofSeconds(Math.min(LONGEST_PAUSE_S, 1L << Math.min(failures - 1, SLOWEST_DOUBLING)));
    }

    private void keep(Claim stands, String answer, Duration pause) {
        Instant now = clock.instant();
        QuarkusTransaction.requiringNew().run(() -> rows.told(stands, answer, now, now.plus(pause)));
    }

    /** The status it answered with, or in words why there was none. */
    private String send(Receiver receiver, long after, ChangeFeed.Part part) {
        String body = body(part);
        String id = receiver.name() + "-" + after + "-" + part.next();
        long seconds = clock.instant().getEpochSecond();
        try {
            HttpRequest request = HttpRequest.newBuilder(receiver.address())
                    .timeout(PATIENCE)
                    .header("content-type", "application/json")
                    .header("webhook-id", id)
                    .header("webhook-timestamp", Long.toString(seconds))
                    .header("webhook-signature", MessageSignature.of(receiver.secret(), id, seconds, body))
                    .POST(HttpRequest.BodyPublishers.ofString(body))
                    .build();
            return Integer.toString(
                    http.send(request, HttpResponse.BodyHandlers.discarding()).statusCode());
        } catch (IOException e) {
            return "no answer (" + e.getClass().getSimpleName() + ")";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "no answer (the server was stopped)";
        }
    }

    private String body(ChangeFeed.Part part) {
        try {
            return json.writeValueAsString(part);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
