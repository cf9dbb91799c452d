package org.benchtrail.ticket.draft;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.form.SheetForm;

/** The drafts of all people, one to a ticket. A form that was sent and done leaves it; nothing else does but the person. */
@Startup
@ApplicationScoped
@Transactional
public class Drafts {
    /** Of one form, in characters of JSON: more than any form of the sheet takes. */
    private static final int MOST = 300_000;

    /** As JSON writes it; the database takes no text with it, and no fact does. */
    private static final String NUL = "\\u0000";

    private static final TypeReference<Map<String, Map<String, List<String>>>> FORMS = new TypeReference<>() {};

    private final EntityManager database;
    private final ObjectMapper json;
    private final Clock clock;
    private final SqlText text;

    Drafts(EntityManager database, ObjectMapper json, Clock clock) {
        this.database = database;
        this.json = json;
        this.clock = clock;
        text = SqlText.of(Drafts.class).having("keep", "sent", "discard", "of");
    }

    /**
     * Keeps what a form holds; a field that it does not send stays as it was kept.
     *
     * @param version of the sheet on which it was typed; what comes after the form was sent on it is no draft any more
     * @throws Invalid if it is more than any form takes
     */
    public void keep(TicketNumber ticket, Actor person, SheetForm form, int version, Map<String, List<String>> typed) {
        Permissions.require(Permission.WORK_TICKETS, person);
        String fields = written(typed.entrySet().stream()
                .filter(field -> form.isAnswer(field.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue)));
        if (fields.length() > MOST) {
            throw new Invalid(
                    SheetForm.WHOLE, "This is too long to be kept as a draft: shorten it, or attach it as a file.");
        }
        of("keep", ticket, person)
                .with("form", form.key(typed))
                .with("version", version)
                .with("fields", fields)
                .with("now", clock.instant())
                .run();
    }

    /** The form was done: what it held is recorded. */
    public void sent(TicketNumber ticket, Actor person, SheetForm form, int version, Map<String, List<String>> typed) {
        of("sent", ticket, person)
                .with("form", form.key(typed))
                .with("version", version)
                .with("now", clock.instant())
                .run();
    }

    /** The person wants none of it. */
    public void discard(TicketNumber ticket, Actor person) {
        Permissions.require(Permission.WORK_TICKETS, person);
        of("discard", ticket, person).run();
    }

    public TypedDraft of(TicketNumber ticket, Actor person) {
        return of("of", ticket, person)
                .row(Row.class)
                .map(row -> new TypedDraft(read(row.forms()), row.saved()))
                .orElse(TypedDraft.NONE);
    }

    private record Row(String forms, Instant saved) {}

    private Sql of(String statement, TicketNumber ticket, Actor person) {
        return Sql.of(database, text.statement(statement))
                .with("ticket", ticket.serial())
                .with("account", person.account());
    }

    private String written(Map<String, List<String>> fields) {
        try {
            return json.writeValueAsString(fields).replace(NUL, "");
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("fields are names and texts", e);
        }
    }

    private Map<String, Map<String, List<String>>> read(String forms) {
        try {
            return json.readValue(forms, FORMS);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("written by this class", e);
        }
    }
}
