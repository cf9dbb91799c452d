package org.benchtrail.core.method;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.text.FieldChecks;

/**
 * Findings, actions and outcome drafted from the record, for the assignee to edit and sign.
 *
 * @param findings symptoms, readings outside their limits, theories ruled out and borne out
 * @param actions what was carried out
 * @param outcome what verification showed
 */
public record SummaryDraft(String findings, String actions, String outcome) {

    public static SummaryDraft of(JobSheet sheet) {
        return new SummaryDraft(findings(sheet), actions(sheet), outcome(sheet));
    }

    private static String findings(JobSheet sheet) {
        Stream<String> symptoms = sheet.all(SymptomRecorded.class).stream()
                .map(s -> "Symptom: " + sentence(s.fact().observable()));
        Stream<String> readings = sheet.all(ReadingRecorded.class).stream()
                .filter(r -> r.fact().verdict() == ReadingVerdict.OUTSIDE)
                .map(r -> "Outside its limit: " + reading(r.fact()) + ".");
        Stream<String> findings = sheet.all(FindingRecorded.class).stream()
                .map(f -> "Found: " + sentence(f.fact().text()));
        Stream<String> ruledOut = sheet.ruledOut().stream()
                .map(t -> "Ruled out: " + sentence(t.fact().text()));
        Stream<String> active = sheet.activeTheory().stream()
                .map(t -> "Borne out: " + sentence(t.fact().text() + evidence(sheet, t.entry())));
        return lines(Stream.of(symptoms, readings, findings, ruledOut, active).flatMap(s -> s));
    }

    private static String evidence(JobSheet sheet, int theory) {
        List<String> seen = sheet.all(CheckPlanned.class, c -> c.fact().theory() == theory).stream()
                .flatMap(c -> sheet.result(c.entry()).stream())
                .map(r -> r.fact().observation())
                .toList();
        return seen.isEmpty() ? "" : " (" + String.join("; ", seen) + ")";
    }

    private static String actions(JobSheet sheet) {
        return lines(sheet.all(ActionSettled.class).stream()
                .filter(a -> a.fact().settlement() != Settlement.NOT_NEEDED)
                .map(a -> sheet.latest(
                                        ActionPlanned.class,
                                        p -> p.entry() == a.fact().action())
                                .map(p -> p.fact().what())
                                .orElse("An action")
                        + ": " + a.fact().settlement().words()
                        + (a.fact().note().isEmpty()
                                ? "."
                                : ". " + sentence(a.fact().note()))));
    }

    private static String outcome(JobSheet sheet) {
        int symptoms = sheet.all(SymptomRecorded.class).size();
        Stream<String> gone = Stream.of("All " + symptoms + " symptoms looked for again and gone.");
        if (symptoms == 1) {
            gone = Stream.of("The symptom was looked for again and is gone.");
        }
        Stream<String> readings = sheet.all(ReadingRecorded.class, r -> r.isAfter(sheet.lastWork())).stream()
                .map(r -> "Measured afterwards: " + reading(r.fact()) + ".");
        Stream<String> requester = sheet.latest(RequesterAnswered.class).stream()
                .map(r -> "The requester " + r.fact().state().words() + ".")
                .map(s -> s.replace("The requester the device", "The device"));
        Stream<String> prevention = sheet.latest(PreventionConsidered.class).stream()
                .map(p -> (p.fact().applies() ? "Prevention: " : "No prevention: ")
                        + sentence(p.fact().text()));
        return lines(Stream.of(gone, readings, requester, prevention).flatMap(s -> s));
    }

    private static String reading(ReadingRecorded r) {
        return r.quantity() + ", " + r.point() + ": " + r.value() + " " + r.unit();
    }

    private static String sentence(String text) {
        return text.endsWith(".") ? text : text + ".";
    }

    private static String lines(Stream<String> sentences) {
        String text = sentences.distinct().collect(Collectors.joining("\n"));
        return text.substring(0, Math.min(text.length(), FieldChecks.PARAGRAPH));
    }
}
