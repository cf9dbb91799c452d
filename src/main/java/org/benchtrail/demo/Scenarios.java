package org.benchtrail.demo;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Missing;
import org.benchtrail.people.Directory;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.trail.FactJson;

/** Loads scenarios by the same acts that people use: what the method refuses, no scenario can have. */
@ApplicationScoped
public class Scenarios {
    /** Sign-in of every demo account; there are none on a shop's own server. */
    public static final String DEMO_PASSWORD = "benchtrail-demo";

    private final TicketActs tickets;
    private final PeopleActs accounts;
    private final Directory people;
    private final EntityManager database;
    private final ObjectMapper mapper;

    Scenarios(TicketActs tickets, PeopleActs accounts, Directory people, EntityManager database, ObjectMapper mapper) {
        this.tickets = tickets;
        this.accounts = accounts;
        this.people = people;
        this.database = database;
        this.mapper = FactJson.teach(mapper.copy());
    }

    /**
     * Loads a file, all of it or nothing; one that was loaded before is left alone.
     *
     * @return numbers of the tickets that were opened; empty if it was loaded before
     * @throws ScenarioFile.Malformed with line and field, if the file cannot be taken
     */
    @Transactional
    public List<String> load(String fileName, String yaml) {
        Scenario scenario = ScenarioFile.read(fileName, yaml);
        if (!remember(scenario.name())) {
            return List.of();
        }
        scenario.accounts().forEach(p -> accounts.ensureAccount(p.login(), p.name(), p.roles(), DEMO_PASSWORD));
        return scenario.tickets().stream().map(job -> load(fileName, job)).toList();
    }

    /** Whether the name is new; of two servers that start at once, one loads it. */
    private boolean remember(String name) {
        return database.createNativeQuery("insert into scenario (name) values (?1) on conflict do nothing")
                        .setParameter(1, name)
                        .executeUpdate()
                == 1;
    }

    private String load(String fileName, Scenario.Job job) {
        Outcome outcome = tickets.open(job.report(), person(fileName, 1, job.by()));
        Map<String, Integer> entries = new HashMap<>();
        for (Scenario.Deed deed : job.acts()) {
            outcome = perform(fileName, deed, outcome, entries);
        }
        return outcome.number().toString();
    }

    private Outcome perform(String fileName, Scenario.Deed deed, Outcome before, Map<String, Integer> entries) {
        Actor actor = person(fileName, deed.line(), deed.by());
        try {
            Fact fact = mapper.treeToValue(resolved(deed.fact(), entries), Fact.class);
            Outcome outcome = tickets.perform(before.number(), before.sheet().entries(), List.of(sheet -> fact), actor);
            if (outcome.refused()) {
                throw malformed(fileName, deed, "", sentences(outcome.missing()));
            }
            if (deed.as() != null) {
                entries.put(deed.as(), outcome.sheet().entries());
            }
            return outcome;
        } catch (Invalid e) {
            throw malformed(
                    fileName,
                    deed,
                    e.problems().get(0).field(),
                    e.problems().get(0).sentence());
        } catch (JsonProcessingException e) {
            for (Throwable cause = e; cause != null; cause = cause.getCause()) {
                if (cause instanceof Invalid invalid) {
                    throw malformed(
                            fileName,
                            deed,
                            invalid.problems().get(0).field(),
                            invalid.problems().get(0).sentence());
                }
            }
            throw malformed(fileName, deed, "", e.getOriginalMessage());
        }
    }

    private static ScenarioFile.Malformed malformed(
            String fileName, Scenario.Deed deed, String field, String sentence) {
        return new ScenarioFile.Malformed(fileName, deed.line(), field, sentence);
    }

    private static String sentences(List<Missing> missing) {
        return "The method refuses this act: "
                + String.join(" ", missing.stream().map(Missing::sentence).toList());
    }

    private Actor person(String fileName, int line, String login) {
        return people.worker(login)
                .orElseThrow(() -> new ScenarioFile.Malformed(
                        fileName, line, "by", "Nobody who works on tickets has the account '" + login + "'."));
    }

    /** The fact with every {@code @name} replaced by the number of the entry of that name. */
    private static JsonNode resolved(JsonNode node, Map<String, Integer> entries) {
        if (node.isTextual() && node.asText().startsWith("@")) {
            Integer entry = entries.get(node.asText().substring(1));
            if (entry == null) {
                throw new Invalid(node.asText(), "No earlier act of this ticket has this name.");
            }
            return IntNode.valueOf(entry);
        }
        if (node instanceof ObjectNode object) {
            ObjectNode copy = JsonNodeFactory.instance.objectNode();
            object.fields().forEachRemaining(e -> copy.set(e.getKey(), resolved(e.getValue(), entries)));
            return copy;
        }
        if (node instanceof ArrayNode array) {
            ArrayNode copy = JsonNodeFactory.instance.arrayNode();
            array.forEach(item -> copy.add(resolved(item, entries)));
            return copy;
        }
        return node;
    }
}
