package org.benchtrail.core.training;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.benchtrail.core.method.CatalogueAnswer;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ExpectedValue;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.verify.SymptomRechecked;

/**
 * Whether what somebody forecast with one chance came, by what the sheet records after it. Only what is objective: a check whose
 * expectation is a bound, by its reading; a finding, by the first value recorded of it; an action, by the symptoms looked for again
 * before anything else was done, once the ticket is accepted. Free words say nothing.
 */
public final class ChanceOutcome {
    private final JobSheet sheet;
    private final int entry;

    private ChanceOutcome(JobSheet sheet, int entry) {
        this.sheet = sheet;
        this.entry = entry;
    }

    /**
     * Empty where it is not known, or cannot be told without somebody's word.
     *
     * @param entry of the forecast; what was recorded before it says nothing
     * @param accepted whether the ticket is accepted as a case
     */
    public static Optional<Boolean> of(JobSheet sheet, ChanceContent forecast, int entry, boolean accepted) {
        ChanceOutcome outcome = new ChanceOutcome(sheet, entry);
        return switch (forecast.kind()) {
            case CHECK -> outcome.check(Integer.parseInt(forecast.about()));
            case FINDING -> outcome.finding(forecast.about(), forecast.value());
            case ACTION -> accepted ? outcome.action(Integer.parseInt(forecast.about())) : Optional.empty();
            case CAUSES_EARLY, CAUSES -> Optional.empty();
        };
    }

    private Optional<Boolean> check(int check) {
        // one that was changed after the forecast is another expectation
        Optional<ExpectedValue> expected = sheet.latest(
                        CheckPlanned.class, c -> c.entry() == check && c.isSettledBefore(entry))
                .flatMap(c -> Optional.ofNullable(c.fact().expected()));
        Optional<ReadingRecorded> reading = sheet.latest(
                        ResultRecorded.class, r -> r.isAfter(entry) && r.fact().check() == check)
                .flatMap(r -> Optional.ofNullable(r.fact().reading()))
                .flatMap(taken -> sheet.latest(ReadingRecorded.class, r -> r.entry() == taken))
                .map(StandingFact::fact);
        return expected.flatMap(e -> reading.map(e::holds));
    }

    private Optional<Boolean> finding(String finding, String value) {
        return sheet.facts().stream()
                .filter(f -> f.isAfter(entry))
                .flatMap(f -> f.fact().says(sheet).stream())
                .filter(said -> said.finding().equals(finding) && isObjective(said))
                .findFirst()
                .map(said -> said.value().equals(value));
    }

    private static boolean isObjective(CatalogueAnswer said) {
        return said.reading() == null
                && !said.value().isEmpty()
                && !said.value().equals("unknown");
    }

    private Optional<Boolean> action(int action) {
        List<StandingFact<ActionSettled>> done =
                sheet.all(ActionSettled.class, a -> a.isAfter(entry) && a.fact().changesDevice());
        Optional<StandingFact<ActionSettled>> own =
                done.stream().filter(a -> a.fact().action() == action).findFirst();
        if (own.isEmpty()) {
            return Optional.empty();
        }
        int from = own.get().entry();
        int next = done.stream()
                .mapToInt(StandingFact::entry)
                .filter(other -> other > from)
                .min()
                .orElse(Integer.MAX_VALUE);
        Map<Integer, Boolean> gone = new TreeMap<>();
        sheet.all(SymptomRechecked.class, s -> s.isAfter(from) && s.entry() < next)
                .forEach(s -> gone.putIfAbsent(s.fact().symptom(), s.fact().gone()));
        return gone.isEmpty() ? Optional.empty() : Optional.of(!gone.containsValue(false));
    }

    /** Kinds in the order in which they are shown. */
    public static List<ForecastKind> kinds() {
        return List.of(ForecastKind.CHECK, ForecastKind.FINDING, ForecastKind.ACTION);
    }
}
