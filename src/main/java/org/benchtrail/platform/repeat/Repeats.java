package org.benchtrail.platform.repeat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.narayana.jta.TransactionExceptionResult;
import io.quarkus.runtime.Startup;
import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.benchtrail.core.Invalid;
import org.benchtrail.platform.FormKey;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/**
 * Does what a request asks for in one transaction with making its answer, and keeps the answer there under the request's key: a
 * connection that breaks loses both or neither, and the same sent again is answered what happened.
 *
 * <p>What was not recorded (an exception) keeps no answer: sent again, it is tried again. A key is its sender's own. Of a page's form,
 * the same key with other contents is another request; of a program's, a mistake.
 */
@Startup
@ApplicationScoped
public class Repeats {
    /** What a program names its request by. */
    public static final String HEADER = "Idempotency-Key";

    private static final Duration KEPT = Duration.ofHours(24);
    private static final int LONGEST = 100;

    private final EntityManager database;
    private final SecurityIdentity sender;
    private final RoutingContext request;
    private final ObjectMapper mapper;
    private final Clock clock;
    private final SqlText text;

    Repeats(EntityManager database, SecurityIdentity sender, RoutingContext request, ObjectMapper mapper, Clock clock) {
        this.database = database;
        this.sender = sender;
        this.request = request;
        this.mapper = mapper;
        this.clock = clock;
        text = SqlText.of(Repeats.class).having("wait", "find", "keep");
    }

    /**
     * For a form of a page. Only an answer that leads on is kept: a page that says what is wrong is made anew.
     *
     * @param act its exceptions take back all that it did
     */
    public Response once(PostedForm form, Supplier<Response> act) {
        String key = form.text(FormKey.FIELD);
        Map<String, ?> typed = new TreeMap<>(form.typed());
        typed.remove(FormKey.TOKEN);
        byte[] asked = hash(typed.toString());
        // what was changed after going back is another request
        String own = key.isEmpty() || key.length() > LONGEST
                ? ""
                : "form " + key + " " + HexFormat.of().formatHex(asked, 0, 16);
        return inOne(own, asked, act, answer -> answer.getStatus() == 303);
    }

    /**
     * For a request to the API.
     *
     * @param asked what the body asks for, as text
     * @throws Invalid if the key is none, or was used for something else
     */
    public Response once(String asked, Supplier<Response> act) {
        String header = request.request().getHeader(HEADER);
        String key = header == null ? "" : unquoted(header.strip());
        if (header != null && !isKey(key)) {
            throw new Invalid(
                    HEADER, "Send a key of 1 to " + LONGEST + " printable characters, a new one for each request.");
        }
        return inOne(key, hash(asked), act, answer -> true);
    }

    /** Stands for bytes in what a body asks for. */
    public static String fingerprint(byte[] content) {
        return HexFormat.of().formatHex(hash(content));
    }

    private Response inOne(
            String key, byte[] asked, Supplier<Response> act, java.util.function.Predicate<Response> kept) {
        return QuarkusTransaction.requiringNew()
                .exceptionHandler(failure -> failure instanceof RecordBroken
                        ? TransactionExceptionResult.COMMIT
                        : TransactionExceptionResult.ROLLBACK)
                .call(() -> key.isEmpty() ? act.get() : lookOrDo(key, asked, act, kept));
    }

    private Response lookOrDo(
            String key, byte[] what, Supplier<Response> act, java.util.function.Predicate<Response> kept) {
        String account = sender.getPrincipal().getName();
        byte[] asked = hash(request.request().method() + " " + request.normalizedPath() + " "
                + HexFormat.of().formatHex(what));
        Sql.of(database, text.statement("wait"))
                .with("name", account + " " + key)
                .value(Integer.class);
        Optional<KeptAnswer> before = Sql.of(database, text.statement("find"))
                .with("account", account)
                .with("key", key)
                .with("keptSince", clock.instant().minus(KEPT))
                .row(KeptAnswer.class);
        if (before.isPresent()) {
            if (!Arrays.equals(asked, before.get().asked())) {
                throw new Invalid(HEADER, "This key was used for another request; choose a new one for each.");
            }
            return before.get().again();
        }
        Response answer = act.get();
        if (kept.test(answer)) {
            keep(account, key, KeptAnswer.of(asked, answer, body(answer)));
        }
        return answer;
    }

    private void keep(String account, String key, KeptAnswer answer) {
        Instant now = clock.instant();
        Sql.of(database, text.statement("keep"))
                .with("account", account)
                .with("key", key)
                .with("asked", answer.asked())
                .with("now", now)
                .with("keptSince", now.minus(KEPT))
                .with("status", answer.status())
                .with("location", answer.location())
                .with("etag", answer.etag())
                .with("media", answer.media())
                .with("body", answer.body())
                .run();
    }

    private byte[] body(Response answer) {
        Object entity = answer.getEntity();
        if (entity == null) {
            return new byte[0];
        }
        try {
            return entity instanceof String said
                    ? said.getBytes(StandardCharsets.UTF_8)
                    : mapper.writeValueAsBytes(entity);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an answer of ours is JSON", e);
        }
    }

    /** A key may stand in quotes, as a structured field has it (RFC 9651). */
    private static String unquoted(String header) {
        boolean quoted = header.length() >= 2 && header.startsWith("\"") && header.endsWith("\"");
        return quoted ? header.substring(1, header.length() - 1) : header;
    }

    private static boolean isKey(String key) {
        return !key.isEmpty() && key.length() <= LONGEST && key.chars().allMatch(c -> c > 0x20 && c < 0x7f);
    }

    private static byte[] hash(String text) {
        return hash(text.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] hash(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
