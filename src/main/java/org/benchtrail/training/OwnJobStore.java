package org.benchtrail.training;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.benchtrail.core.training.OwnJobCheck;
import org.benchtrail.platform.sql.OwnAccount;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** Where mentors' jobs are kept: every text that was saved, what its check came to, and to whom it was given. */
@Startup
@ApplicationScoped
class OwnJobStore {
    private static final ObjectMapper JSON = JsonMapper.builder().build();

    private final EntityManager database;
    private final SqlText text = SqlText.of(OwnJobStore.class)
            .having(
                    "create",
                    "save",
                    "check",
                    "lock",
                    "list",
                    "one",
                    "result",
                    "versions",
                    "text",
                    "give",
                    "people",
                    "waiting",
                    "lockGiven",
                    "begun",
                    "withdraw");

    OwnJobStore(EntityManager database) {
        this.database = database;
    }

    private Sql sql(String name) {
        return Sql.of(database, text.statement(name));
    }

    private <T> T apart(Supplier<T> statements) {
        return OwnAccount.PRACTICE.during(database, statements);
    }

    /** One text of one job. */
    record Ref(int own, int version) {}

    /**
     * A job by its newest text.
     *
     * @param clean what its check came to; null if it was not checked
     * @param given how often it was given to somebody
     */
    record Row(
            int id,
            String author,
            int version,
            String text,
            Instant saved,
            @Nullable Instant withdrawn,
            @Nullable Boolean clean,
            long given) {
        Ref ref() {
            return new Ref(id, version);
        }
    }

    record Version(int version, Instant saved) {}

    record Given(String person, int version, Instant given, boolean begun) {}

    /** A job that somebody was given and has not begun. */
    record Waiting(int id, int own, int version, String by, String text) {}

    record Checked(Instant checked, OwnJobCheck.Result result) {}

    private record CheckRow(Instant checked, boolean clean, String result) {}

    int create(String author, Instant at) {
        return apart(() -> sql("create").with("author", author).with("at", at).value(Integer.class));
    }

    void save(Ref ref, String written, Instant at) {
        apart(() -> sql("save")
                .with("own", ref.own)
                .with("version", ref.version)
                .with("text", written)
                .with("at", at)
                .run());
    }

    void check(Ref ref, OwnJobCheck.Result result, Instant at) {
        try {
            String written = JSON.writeValueAsString(result);
            apart(() -> sql("check")
                    .with("own", ref.own)
                    .with("version", ref.version)
                    .with("at", at)
                    .with("clean", result.clean())
                    .with("result", written)
                    .run());
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    Optional<Checked> checked(Ref ref) {
        return apart(() -> sql("result")
                        .with("own", ref.own)
                        .with("version", ref.version)
                        .row(CheckRow.class))
                .map(row -> new Checked(row.checked, read(row.result)));
    }

    private static OwnJobCheck.Result read(String result) {
        try {
            return JSON.readerFor(OwnJobCheck.Result.class)
                    .without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                    .readValue(result);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @param all with those of others that were given to somebody */
    List<Row> list(String viewer, boolean all) {
        return apart(() -> sql("list").with("viewer", viewer).with("all", all).rows(Row.class));
    }

    Optional<Row> one(int own) {
        return apart(() -> sql("one").with("own", own).row(Row.class));
    }

    /** Nobody else saves, gives or withdraws it until the transaction ends. */
    Optional<Row> locked(int own) {
        apart(() -> sql("lock").with("own", own).values(Integer.class));
        return one(own);
    }

    List<Version> versions(int own) {
        return apart(() -> sql("versions").with("own", own).rows(Version.class));
    }

    Optional<String> text(Ref ref) {
        return apart(() -> sql("text")
                        .with("own", ref.own)
                        .with("version", ref.version)
                        .values(String.class))
                .stream()
                .findFirst();
    }

    void give(Ref ref, String person, String by, Instant at) {
        apart(() -> sql("give")
                .with("own", ref.own)
                .with("version", ref.version)
                .with("person", person)
                .with("by", by)
                .with("at", at)
                .run());
    }

    List<Given> people(int own) {
        return apart(() -> sql("people").with("own", own).rows(Given.class));
    }

    List<Waiting> waiting(String person) {
        return apart(() -> sql("waiting").with("person", person).rows(Waiting.class));
    }

    /** As {@link #waiting}; nobody else begins that one until the transaction ends. */
    Optional<Waiting> lockedWaiting(int given, String person) {
        apart(() -> sql("lockGiven").with("given", given).values(Integer.class));
        return waiting(person).stream().filter(w -> w.id == given).findFirst();
    }

    void begun(int given, int job) {
        apart(() -> sql("begun").with("given", given).with("job", job).run());
    }

    void withdraw(int own, Instant at) {
        apart(() -> sql("withdraw").with("own", own).with("at", at).run());
    }
}
