package org.benchtrail.ticket.test;

import static org.benchtrail.ticket.form.FieldGroup.special;

import java.util.List;
import java.util.Map;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;
import org.benchtrail.ticket.identify.EvidenceForm;

/** A check of the active theory planned, and its result. */
public final class TestForms {
    private static final SheetForm CHECK = SheetForm.of("check", special("check", CheckPlanned.class, TestForms::check))
            .fields("refute")
            .moving(posting -> posting.form().has("refute") ? new RuledOut() : SheetForm.onwards(posting));

    private static final SheetForm RESULT = SheetForm.of("result")
            .about("result.check")
            .with(EvidenceForm.GROUPS)
            .with(special("result", ResultRecorded.class, TestForms::result))
            .fields(EvidenceForm.LIMIT)
            .moving(TestForms::afterResult);

    public static final List<SheetForm> ALL = List.of(CHECK, RESULT);

    private TestForms() {}

    private static void check(Posting posting) {
        if (posting.form().given("check")) {
            posting.sheet()
                    .activeTheory()
                    .ifPresent(theory -> posting.record("check", CheckPlanned.class, Map.of("theory", theory.entry())));
        }
    }

    /** It rests on the reading that the same form records. */
    private static void result(Posting posting) {
        posting.form().read("result", ResultRecorded.class, seen(posting)).ifPresent(result -> {
            boolean measured = result.reading() == null && posting.form().has("reading.value");
            posting.add(measured ? sheet -> result.on(lastReading(sheet)) : sheet -> result);
        });
    }

    /** An answer to the question of the check says what was seen, where nothing is written beside it. */
    private static Map<String, String> seen(Posting posting) {
        String answer = posting.form().text("result.answer");
        if (answer.isEmpty() || posting.form().has("result.observation")) {
            return Map.of();
        }
        return posting.sheet().all(CheckPlanned.class).stream()
                .filter(check -> posting.form().text("result.check").equals(Integer.toString(check.entry())))
                .flatMap(check -> posting.context().category().stream()
                        .flatMap(category ->
                                SheetEvidence.finding(category, check.fact().finding()).stream()))
                .findFirst()
                .map(finding -> Map.of("observation", finding.label() + ": " + answer))
                .orElse(Map.of());
    }

    private static int lastReading(JobSheet sheet) {
        return sheet.latest(ReadingRecorded.class).orElseThrow().entry();
    }

    /** What the result calls for. */
    private static MoveFact afterResult(Posting posting) {
        boolean refuted = posting.form().text("result.outcome").equals(CheckOutcome.REFUTES.name());
        return refuted ? new RuledOut() : SheetForm.onwards(posting);
    }
}
