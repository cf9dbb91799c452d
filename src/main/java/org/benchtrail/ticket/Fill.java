package org.benchtrail.ticket;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.SummaryDraft;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.theorize.ObviousQuestioned;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;

/** What the fields of the forms hold: what was typed and not yet taken, else what is on the sheet. */
public final class Fill {
    private static final ObjectMapper MAPPER =
            JsonMapper.builder().addModule(new JavaTimeModule()).build();

    private final Map<String, List<String>> values = new HashMap<>();
    private final Map<String, String> errors = new HashMap<>();

    /** What the sheet says. */
    static Fill of(JobSheet sheet) {
        Fill fill = new Fill();
        fill.latest(sheet, "onset", OnsetRecorded.class);
        fill.latest(sheet, "changes", ChangesAsked.class);
        fill.latest(sheet, "scope", ScopeRecorded.class);
        fill.latest(sheet, "reproduction", ReproductionTried.class);
        fill.latest(sheet, "hazards", HazardsScreened.class);
        fill.latest(sheet, "data", DataAnswered.class);
        fill.latest(sheet, "logs", LogsReviewed.class);
        fill.latest(sheet, "noevidence", EvidenceImpossible.class);
        fill.latest(sheet, "obvious", ObviousQuestioned.class);
        fill.ofRound(sheet, "choice", TheoryChosen.class);
        fill.ofRound(sheet, "maker", MakerConsulted.class);
        fill.sinceWork(sheet, "function", FunctionChecked.class);
        fill.sinceWork(sheet, "requester", RequesterAnswered.class);
        fill.latest(sheet, "prevention", PreventionConsidered.class);
        sheet.activeTheory().ifPresent(theory -> fill.cause(theory.fact()));
        fill.ofRound(sheet, "cause", CauseNamed.class);
        fill.ofRound(sheet, "knowledge", KnowledgeLinked.class);
        fill.ofRound(sheet, "effort", EffortRecorded.class);
        fill.put("summary", SummaryDraft.of(sheet));
        fill.ofRound(sheet, "summary", SummaryWritten.class);
        fill.values.put("symptom.words", List.of(firstWords(sheet)));
        return fill;
    }

    /** What the first symptom begins with: the words of the report; empty once there is a symptom. */
    static String firstWords(JobSheet sheet) {
        if (!sheet.all(SymptomRecorded.class).isEmpty()) {
            return "";
        }
        String words = sheet.opened().words();
        return words.isEmpty() ? sheet.opened().title() : words;
    }

    /** Nothing but what was typed. */
    static Fill empty() {
        return new Fill();
    }

    /** What was typed stands before what is on the sheet. */
    Fill typed(Map<String, List<String>> typed, List<Problem> problems) {
        values.putAll(typed);
        problems.forEach(p -> errors.putIfAbsent(p.field(), p.sentence()));
        return this;
    }

    public String value(String name) {
        return values.getOrDefault(name, List.of()).stream().findFirst().orElse("");
    }

    public boolean is(String name, String option) {
        return values.getOrDefault(name, List.of()).contains(option);
    }

    /** What is wrong with a field; empty if nothing is. */
    public String error(String name) {
        return errors.getOrDefault(name, "");
    }

    public boolean wrong(String name) {
        return errors.containsKey(name);
    }

    /** Whether anything was typed or is wrong in a group, so that a folded part has to be shown open. */
    public boolean touched(String group) {
        return values.entrySet().stream()
                        .anyMatch(e -> e.getKey().startsWith(group + ".")
                                && e.getValue().stream().anyMatch(v -> !v.isBlank()))
                || errors.keySet().stream().anyMatch(k -> k.startsWith(group));
    }

    /** The cause is first taken for what the supported theory says. */
    private void cause(TheoryStated theory) {
        values.put("cause.cause", List.of(theory.text()));
        if (theory.causeId() != null) {
            values.put("cause.causeId", List.of(theory.causeId()));
        }
    }

    private <F extends Fact> void latest(JobSheet sheet, String group, Class<F> kind) {
        sheet.latest(kind).ifPresent(n -> put(group, n.fact()));
    }

    private <F extends Fact> void ofRound(JobSheet sheet, String group, Class<F> kind) {
        sheet.latestOfRound(kind).ifPresent(n -> put(group, n.fact()));
    }

    private <F extends Fact> void sinceWork(JobSheet sheet, String group, Class<F> kind) {
        sheet.latest(kind).filter(n -> n.entry() > sheet.lastWork()).ifPresent(n -> put(group, n.fact()));
    }

    /** Every component of a record, maps opened, under its dotted name. */
    final void put(String group, Object record) {
        open(group, MAPPER.valueToTree(record));
    }

    private void open(String name, JsonNode node) {
        if (node.isObject()) {
            node.fields().forEachRemaining(e -> open(name + "." + e.getKey(), e.getValue()));
        } else if (node.isArray()) {
            List<String> all = new java.util.ArrayList<>();
            node.forEach(n -> all.add(n.asText()));
            values.put(name, all);
        } else if (!node.isNull()) {
            values.put(name, List.of(node.asText()));
        }
    }
}
