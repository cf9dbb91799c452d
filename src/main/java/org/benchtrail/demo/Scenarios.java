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
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.people.Directory;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.training.ForecastActs;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Loads scenarios by the same acts that people use: what the method refuses, no scenario can have. */
@ApplicationScoped
public class Scenarios {
    /** Sign-in of every demo account; there are none on a shop's own server. */
    public static final String DEMO_PASSWORD = "benchtrail-demo";

    private static final String FORECAST = "forecast-committed";

    private final TicketActs tickets;
    private final ForecastActs forecasts;
    private final PeopleActs accounts;
    private final Directory people;
    private final EntityManager database;
    private final String remember = SqlText.of(Scenarios.class).statement("remember");
    private final ObjectMapper mapper;
    private final boolean demo;
    private PeopleActs.@Nullable KnownPassword password;

    Scenarios(
            TicketActs tickets,
            ForecastActs forecasts,
            PeopleActs accounts,
            Directory people,
            EntityManager database,
            ObjectMapper mapper,
            @ConfigProperty(name = "benchtrail.demo", defaultValue = "false") boolean demo) {
        this.tickets = tickets;
        this.forecasts = forecasts;
        this.accounts = accounts;
        this.people = people;
        this.database = database;
        this.mapper = ScenarioFile.strict(mapper.copy());
        this.demo = demo;
    }

    /**
     * Loads a file, all of it or nothing; one that was loaded before is left alone.
     *
     * @return numbers of the tickets that were opened; nothing if it was loaded before
     * @throws ScenarioFile.Malformed with line and field, if the file cannot be taken
     */
    @Transactional
    public Optional<List<String>> load(String fileName, String yaml) {
        Scenario scenario = ScenarioFile.read(fileName, yaml);
        if (!remember(scenario.name())) {
            return Optional.empty();
        }
        scenario.accounts().forEach(person -> ensure(fileName, person));
        scenario.accounts().stream()
                .filter(person -> !person.mentor().isEmpty())
                .forEach(person -> ensureMentor(fileName, person));
        return Optional.of(
                scenario.tickets().stream().map(job -> load(fileName, job)).toList());
    }

    /** The password is known to everybody, so only the demo makes accounts with it. */
    private void ensure(String fileName, Scenario.Person person) {
        if (people.knows(person.login())) {
            return;
        }
        if (!demo) {
            throw new ScenarioFile.Malformed(
                    fileName,
                    person.place().line("login"),
                    "login",
                    "There is no account '" + person.login() + "' here, and only the demo makes accounts from a file."
                            + " Make the account first.");
        }
        try {
            accounts.makeAccount(person.login(), person.name(), person.roles(), password());
        } catch (Invalid e) {
            throw malformed(fileName, person.place(), e);
        }
    }

    private PeopleActs.KnownPassword password() {
        if (password == null) {
            password = accounts.known(DEMO_PASSWORD);
        }
        return password;
    }

    private void ensureMentor(String fileName, Scenario.Person person) {
        try {
            accounts.ensureMentor(person.login(), person.mentor());
        } catch (Invalid e) {
            throw malformed(fileName, person.place(), e);
        }
    }

    /** Whether the name is new; of two servers that start at once, one loads it. */
    boolean remember(String name) {
        return Sql.of(database, remember).with("name", name).run() == 1;
    }

    private String load(String fileName, Scenario.Job job) {
        Outcome outcome = open(fileName, job);
        Map<String, Integer> entries = new HashMap<>();
        for (Scenario.Deed deed : job.acts()) {
            outcome = perform(fileName, deed, outcome, entries);
            if (deed.as() != null) {
                entries.put(deed.as(), outcome.sheet().entries());
            }
        }
        return outcome.number().toString();
    }

    private Outcome open(String fileName, Scenario.Job job) {
        Actor actor = person(fileName, job.place(), job.by());
        try {
            return tickets.open(job.report(), actor);
        } catch (Invalid e) {
            throw malformed(fileName, job.reported(), e);
        }
    }

    private Outcome perform(String fileName, Scenario.Deed deed, Outcome before, Map<String, Integer> entries) {
        Actor actor = person(fileName, deed.place(), deed.by());
        try {
            Outcome outcome = deed.fact().get("kind").asText().equals(FORECAST)
                    ? forecast(deed.fact(), before, actor)
                    : recorded(resolved("", deed.fact(), entries), before, actor);
            if (outcome.refused()) {
                throw new ScenarioFile.Malformed(
                        fileName, deed.place().line("kind"), "kind", sentences(outcome.missing()));
            }
            return outcome;
        } catch (Invalid e) {
            throw malformed(fileName, deed.place(), e);
        } catch (JsonProcessingException e) {
            throw malformed(fileName, deed.place(), ScenarioFile.problem(e));
        }
    }

    private Outcome recorded(JsonNode deed, Outcome before, Actor actor) throws JsonProcessingException {
        Fact fact = mapper.treeToValue(deed, Fact.class);
        return tickets.perform(before.number(), before.sheet().entries(), List.of(sheet -> fact), actor);
    }

    /**
     * What it says is no fact: the trail holds only what stands for it.
     *
     * @param causes per cent by id; what is left to 100 is something else
     */
    record Forecast(String kind, ForecastKind forecast, Map<String, Integer> causes, String nextTest) {}

    private Outcome forecast(JsonNode deed, Outcome before, Actor actor) throws JsonProcessingException {
        Forecast said = mapper.treeToValue(deed, Forecast.class);
        return forecasts.commit(
                before.number(), before.sheet().entries(), said.forecast(), said.causes(), said.nextTest(), actor);
    }

    private static ScenarioFile.Malformed malformed(String fileName, Scenario.FilePlace place, Invalid invalid) {
        Invalid.Problem first = invalid.problems().get(0);
        return new ScenarioFile.Malformed(fileName, place.line(first.field()), first.field(), first.sentence());
    }

    private static String sentences(List<Missing> missing) {
        return "The method refuses this act: "
                + String.join(" ", missing.stream().map(Missing::sentence).toList());
    }

    private Actor person(String fileName, Scenario.FilePlace place, String login) {
        return people.worker(login)
                .orElseThrow(() -> new ScenarioFile.Malformed(
                        fileName,
                        place.line("by"),
                        "by",
                        "Nobody who works on tickets has the account '" + login + "'."));
    }

    /** The fact with every {@code @name} replaced by the number of the entry of that name. */
    static JsonNode resolved(String field, JsonNode node, Map<String, Integer> entries) {
        if (node.isTextual() && node.asText().startsWith("@")) {
            Integer entry = entries.get(node.asText().substring(1));
            if (entry == null) {
                throw new Invalid(field, "No earlier act of this ticket has the name '" + node.asText() + "'.");
            }
            return IntNode.valueOf(entry);
        }
        if (node instanceof ObjectNode object) {
            ObjectNode copy = JsonNodeFactory.instance.objectNode();
            object.fields().forEachRemaining(e -> {
                String name = field.isEmpty() ? e.getKey() : field + "." + e.getKey();
                copy.set(e.getKey(), resolved(name, e.getValue(), entries));
            });
            return copy;
        }
        if (node instanceof ArrayNode array) {
            ArrayNode copy = JsonNodeFactory.instance.arrayNode();
            array.forEach(item -> copy.add(resolved(field + "[" + copy.size() + "]", item, entries)));
            return copy;
        }
        return node;
    }
}
