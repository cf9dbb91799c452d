package org.benchtrail.ticket.verify;

import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.SoakTime;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.core.method.verify.VerifyRequirement;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.identify.EvidenceView;

/**
 * What has to be looked at again.
 *
 * @param readings that were outside and are not proven back within
 * @param functions of the category's checklist, each as the name of its field and in words
 * @param soakTime how long an intermittent fault has to run clean; empty if no soak time is asked for
 * @param soakSince when the run was started; empty if none runs
 */
public record VerifyView(
        List<Recheck> symptoms,
        List<EvidenceView.Reading> readings,
        List<Option> functions,
        String soakTime,
        String soakSince) {

    /** A symptom, and what the latest re-check after the last action said; empty if there was none. */
    public record Recheck(int entry, String observable, String said) {}

    public static VerifyView of(Viewing viewing, List<Requirement.Status> gate) {
        JobSheet sheet = viewing.sheet();
        return new VerifyView(
                VerifyForms.owedSymptoms(sheet).stream()
                        .map(s -> recheck(s, sheet))
                        .toList(),
                Method.readingsToRepeat(sheet).stream()
                        .map(EvidenceView.Reading::of)
                        .toList(),
                functions(sheet.checkedAs().functions()),
                isSoaking(gate) ? SoakTime.words(Method.soakMinutes(sheet, viewing.policy())) : "",
                SoakTime.running(sheet).map(s -> viewing.time(s.stamp().at())).orElse(""));
    }

    private static Recheck recheck(StandingFact<SymptomRecorded> symptom, JobSheet sheet) {
        String said = sheet.latest(SymptomRechecked.class, r -> r.fact().symptom() == symptom.entry())
                .filter(r -> r.isAfter(sheet.lastWork()))
                .map(r -> (r.fact().gone() ? "gone: " : "still there: ")
                        + r.fact().how())
                .orElse("");
        return new Recheck(symptom.entry(), symptom.fact().observable(), said);
    }

    private static List<Option> functions(List<String> functions) {
        return IntStream.range(0, functions.size())
                .mapToObj(i -> new Option("function.answers." + i, functions.get(i)))
                .toList();
    }

    private static boolean isSoaking(List<Requirement.Status> gate) {
        return gate.stream()
                .anyMatch(s ->
                        s.requirement() == VerifyRequirement.SOAK_TIME_PASSED && s.state() != Requirement.State.MET);
    }
}
