package org.benchtrail.ticket.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ExpectedValue;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.FactText;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.identify.MarkedPicture;
import org.benchtrail.ticket.identify.ReadingSeries;
import org.benchtrail.ticket.identify.ReadingWords;
import org.benchtrail.ticket.record.RecordLine.After;
import org.benchtrail.ticket.record.RecordLine.Change;
import org.benchtrail.ticket.record.RecordLine.Check;
import org.benchtrail.ticket.record.RecordLine.Reading;
import org.benchtrail.ticket.record.RecordLine.Remark;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/**
 * The entries of a trail as lines of a record, each in the step it belongs to. A correction and a remark stand at the entry that
 * they are about; an entry that was struck out stands with what it said. Which is which each fact says itself.
 */
final class RecordLines {
    private final Viewing viewing;
    private final Map<Integer, Entry> trail = new LinkedHashMap<>();
    private final Map<Integer, StandingFact<?>> standing = new LinkedHashMap<>();
    private final List<ReadingSeries> series;
    private final Function<MarkedPicture, @Nullable MarkedPicture> pictures;

    /** @param pictures each as it is shown where the record is read; null leaves it out */
    RecordLines(List<TrailEntry> entries, Viewing viewing, Function<MarkedPicture, @Nullable MarkedPicture> pictures) {
        this.viewing = viewing;
        this.pictures = pictures;
        entries.forEach(e -> e.readable().ifPresent(read -> trail.put(e.entry(), read)));
        viewing.sheet().facts().forEach(f -> standing.put(f.entry(), f));
        series = ReadingSeries.all(viewing.sheet().all(ReadingRecorded.class));
    }

    /** What was measured while the ticket stood at that step. */
    List<Reading> readings(Step step) {
        return viewing.sheet().all(ReadingRecorded.class, r -> r.during() == step).stream()
                .map(this::reading)
                .toList();
    }

    private Reading reading(StandingFact<ReadingRecorded> r) {
        ReadingRecorded fact = r.fact();
        return new Reading(
                line(r.entry()),
                fact.quantity() + ", " + fact.point(),
                ReadingWords.of(fact),
                fact.limitSource(),
                fact.instrument() + (fact.accuracy() == null ? "" : " \u00b1 " + fact.accuracy()));
    }

    /** Series of readings whose last was measured at that step. */
    List<ReadingSeries> series(Step step) {
        return series.stream()
                .filter(s -> Objects.requireNonNull(standing.get(s.last())).during() == step)
                .toList();
    }

    List<Check> checks(Step step) {
        return viewing.sheet().all(CheckPlanned.class, c -> step(c.entry()) == step).stream()
                .map(this::check)
                .toList();
    }

    private Check check(StandingFact<CheckPlanned> check) {
        CheckPlanned fact = check.fact();
        Optional<StandingFact<ResultRecorded>> result = viewing.sheet().result(check.entry());
        return new Check(
                line(check.entry()),
                fact.what(),
                fact.cautions().stream().map(Option::words).collect(Collectors.joining(", ")),
                expected(fact),
                result.map(r -> Option.words(r.fact().outcome())).orElse(""),
                result.map(r -> r.fact().observation()).orElse(""),
                result.map(viewing::stamp).orElse(""),
                result.map(StandingFact::entry).orElse(0));
    }

    private static String expected(CheckPlanned check) {
        ExpectedValue value = check.expected();
        String words = value == null ? "" : words(value);
        return check.expectation() + (check.expectation().isEmpty() || words.isEmpty() ? "" : "; ") + words;
    }

    private static String words(ExpectedValue value) {
        if (value.lower() != null && value.upper() != null) {
            return value.lower() + " to " + value.upper() + " " + value.unit();
        }
        return (value.lower() != null ? "at least " + value.lower() : "at most " + value.upper()) + " " + value.unit();
    }

    /** All else. */
    List<RecordLine> others(Step step) {
        return trail.keySet().stream()
                .filter(entry -> step(entry) == step && isALineOfItsOwn(entry))
                .map(this::line)
                .toList();
    }

    private boolean isALineOfItsOwn(int entry) {
        return switch (Objects.requireNonNull(trail.get(entry)).fact().placeIn(viewing.sheet())) {
            case LINE -> true;
            case TABLE -> !standing.containsKey(entry);
            case AT_ENTRY, SIGNATURE, TRAIL -> false;
        };
    }

    /** The step whose part of the record an entry stands in. */
    private Step step(int entry) {
        StandingFact<?> now = standing.get(entry);
        Fact fact = Objects.requireNonNull(trail.get(entry)).fact();
        Step own = fact.shownUnder();
        if (own != null) {
            return own;
        }
        return now != null
                ? now.during()
                : corrections(entry).stream()
                        .flatMap(c -> Optional.ofNullable(standing.get(c.stamp().entry())).stream())
                        .map(StandingFact::during)
                        .findFirst()
                        .orElse(viewing.sheet().step());
    }

    private RecordLine line(int entry) {
        Entry first = Objects.requireNonNull(trail.get(entry));
        StandingFact<?> now = standing.get(entry);
        int round = now == null || viewing.sheet().round() == 1 ? 0 : now.round();
        return new RecordLine(
                entry,
                FactText.kind(first.fact()),
                text(now == null ? first.fact() : now.fact()),
                viewing.stamp(first.stamp()),
                round,
                now != null && now.late(),
                now == null,
                now == null ? null : picture(now),
                new After(changes(entry, first.fact()), remarks(entry)));
    }

    private @Nullable MarkedPicture picture(StandingFact<?> now) {
        return viewing.sheet().all(AttachmentAdded.class, a -> a.entry() == now.entry()).stream()
                .findFirst()
                .flatMap(file -> MarkedPicture.of(file, viewing.sheet()))
                .map(pictures)
                .orElse(null);
    }

    private String text(Fact fact) {
        return fact.told(viewing);
    }

    private List<Change> changes(int entry, Fact first) {
        List<Change> changes = new ArrayList<>();
        Fact before = first;
        for (Entry correction : corrections(entry)) {
            Corrected fact = (Corrected) correction.fact();
            changes.add(new Change(
                    correction.stamp().entry(), text(before), fact.reason(), viewing.stamp(correction.stamp())));
            before = fact.replacement() == null ? before : fact.replacement();
        }
        return changes;
    }

    private List<Entry> corrections(int entry) {
        return entries(f -> f instanceof Corrected c && c.entry() == entry);
    }

    private List<Remark> remarks(int entry) {
        return entries(f -> f instanceof Remarked r && Objects.equals(r.entry(), entry)).stream()
                .map(e -> new Remark(((Remarked) e.fact()).text(), viewing.stamp(e.stamp())))
                .toList();
    }

    private List<Entry> entries(Predicate<Fact> which) {
        return trail.values().stream().filter(e -> which.test(e.fact())).toList();
    }
}
