package org.benchtrail.knowledge;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.CheckOutcome;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.jspecify.annotations.Nullable;

/** What a job sheet has to say to later technicians. */
final class SheetDigest {
    private SheetDigest() {}

    /**
     * Answered questions of the catalogue and judged readings, each as {@code finding=value}, the latest answer of each.
     *
     * @param heard what follows from the other facts, the same way; answers stand before it
     */
    static List<String> findings(JobSheet sheet, Map<String, String> heard) {
        Map<String, String> latest = new TreeMap<>(heard);
        for (StandingFact<?> standing : sheet.facts()) {
            if (standing.fact() instanceof ReadingRecorded reading) {
                judged(reading, latest);
            } else {
                standing.fact().says(sheet).ifPresent(said -> latest.put(said.finding(), said.value()));
            }
        }
        return latest.entrySet().stream()
                .filter(e -> !e.getValue().equals("unknown"))
                .map(e -> e.getKey() + "=" + e.getValue())
                .toList();
    }

    /** A reading outside its limit stays a finding, also when a later one, after the repair, lies within. */
    private static void judged(ReadingRecorded reading, Map<String, String> latest) {
        String finding = (reading.quantity() + ", " + reading.point()).toLowerCase(Locale.ROOT);
        switch (reading.verdict()) {
            case OUTSIDE -> latest.put(finding, side(reading));
            case WITHIN -> latest.putIfAbsent(finding, "within");
            case TOO_CLOSE, NOT_JUDGED -> {}
        }
    }

    private static String side(ReadingRecorded reading) {
        boolean above = reading.upper() != null
                && new BigDecimal(reading.value()).compareTo(new BigDecimal(reading.upper())) > 0;
        return above ? "above" : "below";
    }

    /** The story of the ticket in words, for searching. */
    static String body(JobSheet sheet) {
        return lines(sheet.facts().stream()
                .filter(standing -> isTold(standing, sheet))
                .flatMap(standing -> standing.fact().story().stream()));
    }

    /** Each of a kind that is put right where it is wrong; of one that is given again instead, only the answer in force. */
    private static boolean isTold(StandingFact<?> standing, JobSheet sheet) {
        return standing.fact().correctable() != Correctable.NEVER
                || sheet.inForce(standing.fact().getClass())
                        .filter(inForce -> inForce.entry() == standing.entry())
                        .isPresent();
    }

    /** A first draft of a known cause. */
    static CauseText draft(JobSheet sheet, CauseNamed named, FindingWords words) {
        String shows = lines(
                sheet.all(SymptomRecorded.class).stream().map(s -> s.fact().observable()));
        return new CauseText(
                named.cause(),
                sheet.opened().category(),
                causeId(sheet, named),
                paragraph(shows.isEmpty() ? sheet.opened().title() : shows),
                paragraph(apart(sheet, words)),
                paragraph(cure(sheet)));
    }

    /** As named; else that of the theory that was borne out, if it goes by the same words. */
    static @Nullable String causeId(JobSheet sheet, CauseNamed named) {
        if (named.causeId() != null) {
            return named.causeId();
        }
        return sheet.activeTheory()
                .filter(t -> t.fact().text().equalsIgnoreCase(named.cause()))
                .map(t -> t.fact().causeId())
                .orElse(null);
    }

    /** What supported the theory: what was done, what was seen, and which finding of the catalogue that answers. */
    private static String apart(JobSheet sheet, FindingWords words) {
        return lines(sheet.ofRound(ResultRecorded.class).stream()
                .filter(r -> r.fact().outcome() == CheckOutcome.SUPPORTS)
                .map(r -> sheet.latest(
                                        CheckPlanned.class,
                                        c -> c.entry() == r.fact().check())
                                .map(c -> c.fact().what() + ": ")
                                .orElse("")
                        + r.fact().observation()
                        + r.fact()
                                .says(sheet)
                                .map(said -> " (" + words.one(said.finding() + "=" + said.value()) + ")")
                                .orElse("")));
    }

    private static String cure(JobSheet sheet) {
        return lines(sheet.actions().stream()
                .filter(a -> sheet.settlement(a.entry())
                        .filter(s -> s.fact().settlement() == Settlement.CARRIED_OUT)
                        .isPresent())
                .map(a -> a.fact().what()));
    }

    private static String lines(Stream<String> texts) {
        return texts.filter(t -> !t.isBlank()).distinct().collect(Collectors.joining("\n"));
    }

    private static String paragraph(String text) {
        return CauseText.atMost(CauseText.PARAGRAPH, text);
    }

    /** Minutes over all rounds; null if none were recorded. */
    static @Nullable Integer minutes(JobSheet sheet) {
        TreeSet<Integer> rounds = sheet.all(EffortRecorded.class).stream()
                .map(StandingFact::round)
                .collect(Collectors.toCollection(TreeSet::new));
        int sum = rounds.stream()
                .flatMap(round -> sheet.latest(EffortRecorded.class, e -> e.round() == round).stream())
                .mapToInt(e -> e.fact().minutes())
                .sum();
        return rounds.isEmpty() ? null : sum;
    }
}
