package org.benchtrail.demo;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.people.Directory;
import org.benchtrail.training.PracticeHistory;

/** Loads practice jobs that the demo's trainee has behind them. */
@ApplicationScoped
class PracticeFile {
    private static final ObjectMapper MAPPER = YAMLMapper.builder().build();

    private final Scenarios scenarios;
    private final Directory people;
    private final PracticeHistory history;
    private final ObjectMapper facts;

    PracticeFile(Scenarios scenarios, Directory people, PracticeHistory history, ObjectMapper mapper) {
        this.scenarios = scenarios;
        this.people = people;
        this.history = history;
        facts = ScenarioFile.strict(mapper.copy());
    }

    /** @param by account of who worked them */
    record Contents(String name, String by, List<Past> jobs) {}

    /**
     * @param acts each with {@code do}, an act on the device, or with the fields of a fact; {@code refused} where the method refuses
     *     it, {@code as} names its entry
     */
    record Past(Family family, String fault, int daysAgo, List<ObjectNode> acts) {}

    /** Loads all of it or nothing; what was loaded before is left alone. */
    @Transactional
    void load(String yaml) {
        Contents contents = read(yaml);
        if (scenarios.remember(contents.name())) {
            Actor by = people.worker(contents.by()).orElseThrow();
            contents.jobs().forEach(past -> load(past, by));
        }
    }

    private void load(Past past, Actor by) {
        PracticeHistory.Job job = history.begin(past.family(), past.fault(), Duration.ofDays(past.daysAgo()), by);
        Map<String, Integer> entries = new HashMap<>();
        for (ObjectNode act : past.acts()) {
            boolean refused = act.remove("refused") != null;
            var as = act.remove("as");
            List<Missing> missing = done(job, act, entries);
            if (refused == missing.isEmpty()) {
                throw new IllegalStateException(
                        "the demo's practice job " + past.fault() + ": " + act + ": " + missing);
            }
            if (as != null) {
                entries.put(as.asText(), job.entries());
            }
        }
    }

    private List<Missing> done(PracticeHistory.Job job, ObjectNode act, Map<String, Integer> entries) {
        if (!act.has("do")) {
            try {
                return job.record(facts.treeToValue(Scenarios.resolved("", act, entries), Fact.class));
            } catch (JsonProcessingException e) {
                throw new IllegalStateException("the demo's practice job has an act that cannot be read: " + act, e);
            }
        }
        if (act.get("do").asText().equals("give-up")) {
            job.giveUp();
            return List.of();
        }
        return job.act(act.get("do").asText());
    }

    private static Contents read(String yaml) {
        try {
            return MAPPER.readValue(yaml, Contents.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the demo's file of practice jobs is not readable", e);
        }
    }
}
