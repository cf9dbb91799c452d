package org.benchtrail.trail;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** Trails that were found broken, and what people want to do about it; all of it is sealed among the incidents. */
@Startup
@ApplicationScoped
public class Mendings {
    private final EntityManager database;
    private final ObjectMapper mapper;
    private final SqlText text =
            SqlText.of(Mendings.class).having("found broken", "incident", "propose", "open", "of ticket", "end");

    Mendings(EntityManager database, ObjectMapper mapper) {
        this.database = database;
        this.mapper = mapper;
    }

    /** How a trail is mended. */
    public enum Way {
        PUT_BACK("put back what is missing"),
        GO_ON("go on after the hole");

        private final String words;

        Way(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * What somebody wants to do.
     *
     * @param first the first entry that is lost, up to {@code last}, where the trail has to end
     * @param state fingerprint of what was stored
     * @param administrators accounts that had that role when it was proposed, with blanks between; so for supervisors
     * @param outcome null as long as it waits
     */
    public record Proposal(
            long id,
            int ticket,
            Way way,
            String reason,
            int first,
            int last,
            String hash,
            String state,
            Instant proposed,
            String by,
            String administrators,
            String supervisors,
            byte @Nullable [] file,
            @Nullable Instant ended,
            @Nullable Outcome outcome,
            @Nullable String endedBy) {}

    /** How a proposal ended. */
    public enum Outcome {
        AGREED,
        WITHDRAWN,
        LAPSED
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    /**
     * Records that a trail was found broken, at an act that was refused for it.
     *
     * @param check which one failed
     * @param act what was refused
     * @return place of the incident
     */
    public long found(
            TicketNumber ticket,
            StoredTrail stored,
            BrokenTrail.End expected,
            String check,
            String sentence,
            String act,
            String by,
            Instant at) {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("about", "ticket " + ticket);
        content.put("sentence", sentence);
        content.put("check", check);
        content.put("expected", expected);
        content.put("found", stored.end());
        content.put("act", act);
        content.put("by", by);
        content.put("at", at.toString());
        try {
            return of("found broken")
                    .with("json", mapper.writeValueAsString(content))
                    .value(Long.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("plain data is JSON", e);
        }
    }

    /** Where a trail had to end when it was found broken; empty if the incident is gone or says nothing of it. */
    public Optional<BrokenTrail.End> expected(long incident) {
        return of("incident").with("place", incident).values(String.class).stream()
                .flatMap(json -> expected(json).stream())
                .findFirst();
    }

    private Optional<BrokenTrail.End> expected(String json) {
        try {
            JsonNode expected = mapper.readTree(json).at("/content/expected");
            return expected.path("hash").isTextual()
                    ? Optional.of(new BrokenTrail.End(
                            expected.path("place").asInt(),
                            expected.path("hash").asText()))
                    : Optional.empty();
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    /** @param administrators see {@link Proposal} */
    public void propose(
            TicketNumber ticket,
            Way way,
            String reason,
            BrokenTrail repair,
            String state,
            byte @Nullable [] file,
            Instant at,
            String by,
            List<String> administrators,
            List<String> supervisors) {
        of("propose")
                .with("ticket", ticket.serial())
                .with("way", way.name())
                .with("reason", reason)
                .with("first", repair.first())
                .with("last", repair.end().place())
                .with("hash", repair.end().hash())
                .with("state", state)
                .with("file", file)
                .with("at", at)
                .with("by", by)
                .with("administrators", String.join(" ", administrators))
                .with("supervisors", String.join(" ", supervisors))
                .run();
    }

    /** What waits for a second person, of a ticket. */
    public Optional<Proposal> waiting(TicketNumber ticket) {
        return of("open").with("ticket", ticket.serial()).row(Proposal.class);
    }

    /** All that was ever proposed about a ticket, the newest first. */
    public List<Proposal> of(TicketNumber ticket) {
        return of("of ticket").with("ticket", ticket.serial()).rows(Proposal.class);
    }

    public void end(Proposal proposal, Outcome outcome, String by, Instant at) {
        of("end")
                .with("id", proposal.id())
                .with("outcome", outcome.name())
                .with("by", by)
                .with("at", at)
                .run();
    }
}
