package org.benchtrail.ticket.identify;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.ticket.Viewing;
import org.jspecify.annotations.Nullable;

/**
 * All that was seen, measured and found on a ticket; it stands beside every step.
 *
 * @param readings that are no part of a series
 * @param data how data at risk are protected
 */
public record EvidenceView(
        List<Symptom> symptoms,
        List<Reading> readings,
        List<ReadingSeries> series,
        List<Answered> answers,
        List<BenchResult> benchResults,
        List<Item> others,
        boolean driveFailing,
        String data) {
    public record Symptom(int entry, String words, String observable, boolean intermittent) {}

    /** A reading held against its limit. */
    public record Reading(int entry, String what, String point, ReadingWords words, String source) {
        public static Reading of(StandingFact<ReadingRecorded> reading) {
            ReadingRecorded fact = reading.fact();
            return new Reading(
                    reading.entry(), fact.quantity(), fact.point(), ReadingWords.of(fact), fact.limitSource());
        }
    }

    /** A question of the catalogue as it was answered last. */
    public record Answered(int entry, String question, String value, String source) {}

    /** What a calculation said. */
    public record BenchResult(int entry, String title, String verdict, String shape, String reason) {}

    /**
     * @param link to the file itself; empty for what is none
     * @param picture null for what is none
     */
    public record Item(
            int entry,
            String title,
            String text,
            String link,
            @Nullable MarkedPicture picture) {}

    public static EvidenceView of(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        List<StandingFact<ReadingRecorded>> readings = sheet.all(ReadingRecorded.class);
        List<ReadingSeries> series = ReadingSeries.all(readings);
        return new EvidenceView(
                sheet.all(SymptomRecorded.class).stream()
                        .map(EvidenceView::symptom)
                        .toList(),
                single(readings, series),
                series,
                answers(sheet),
                sheet.all(BenchResultAttached.class).stream()
                        .map(EvidenceView::benchResult)
                        .toList(),
                others(sheet),
                sheet.driveFailure().isPresent(),
                sheet.latest(DataAnswered.class).map(d -> data(d, viewing)).orElse("not answered yet"));
    }

    private static List<Reading> single(List<StandingFact<ReadingRecorded>> readings, List<ReadingSeries> series) {
        Set<Integer> drawn = series.stream()
                .flatMap(s -> s.readings().stream())
                .map(Reading::entry)
                .collect(Collectors.toSet());
        return readings.stream()
                .filter(r -> !drawn.contains(r.entry()))
                .map(Reading::of)
                .toList();
    }

    private static Symptom symptom(StandingFact<SymptomRecorded> n) {
        return new Symptom(
                n.entry(), n.fact().words(), n.fact().observable(), n.fact().intermittent());
    }

    private static List<Answered> answers(JobSheet sheet) {
        Map<String, Answered> latest = new LinkedHashMap<>();
        for (StandingFact<FindingAnswered> n : sheet.all(FindingAnswered.class)) {
            FindingAnswered fact = n.fact();
            String source = IdentifyChoices.words(fact.source());
            latest.put(fact.finding(), new Answered(n.entry(), fact.question(), fact.value(), source));
        }
        return List.copyOf(latest.values());
    }

    private static BenchResult benchResult(StandingFact<BenchResultAttached> n) {
        BenchResultAttached fact = n.fact();
        return new BenchResult(n.entry(), fact.title(), fact.verdict(), shape(fact.level()), fact.reason());
    }

    private static String shape(Result.Level level) {
        return switch (level) {
            case GOOD -> "\u25cf";
            case BAD -> "\u25b2";
            case CAREFUL, UNDECIDED -> "\u25c6";
            case NONE -> "";
        };
    }

    private static List<Item> others(JobSheet sheet) {
        List<Item> items = new ArrayList<>();
        for (StandingFact<FindingRecorded> n : sheet.all(FindingRecorded.class)) {
            String title = n.fact().driveFailure() ? "Finding: drive failure" : "Finding";
            items.add(new Item(n.entry(), title, n.fact().text(), "", null));
        }
        for (StandingFact<ExtractRecorded> n : sheet.all(ExtractRecorded.class)) {
            items.add(new Item(n.entry(), n.fact().source(), n.fact().text(), "", null));
        }
        String files = "/tickets/" + sheet.opened().ticket() + "/attachments/";
        for (StandingFact<AttachmentAdded> n : sheet.all(AttachmentAdded.class)) {
            AttachmentAdded file = n.fact();
            items.add(new Item(
                    n.entry(),
                    file.fileName(),
                    file.shows(),
                    files + file.sha256(),
                    MarkedPicture.of(n, sheet).orElse(null)));
        }
        return items;
    }

    private static String data(StandingFact<DataAnswered> n, Viewing viewing) {
        String note = n.fact().note().isEmpty() ? "" : ": " + n.fact().note();
        return n.fact().state().words() + note + " (" + viewing.stamp(n) + ")";
    }
}
