package org.benchtrail.core.audit;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.jspecify.annotations.Nullable;

/**
 * What signals see of one ticket: those that it shows by itself, and what is held against other tickets of the lot.
 *
 * @param closedBy account; empty unless it was closed
 */
public record SignalTrace(
        String ticket,
        List<Signal> own,
        List<Text> texts,
        Set<String> summary,
        List<Value> values,
        String closedBy,
        Instant ended) {

    /** A text that was asked for, folded in case and blanks. */
    record Text(int entry, String by, String folded) {}

    /** A reading, by what it is compared with; {@code after} the repair or before. */
    record Value(int entry, Instant at, String key, String digits, boolean after) {}

    private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");
    private static final Pattern BLANKS = Pattern.compile("\\s+");
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final double SECONDS = 60;

    private static final Map<Class<? extends Fact>, Function<Fact, List<String>>> ASKED = asked();

    private static Map<Class<? extends Fact>, Function<Fact, List<String>>> asked() {
        Map<Class<? extends Fact>, Function<Fact, List<String>>> asked = new LinkedHashMap<>();
        ask(asked, SymptomRecorded.class, f -> List.of(f.words(), f.observable()));
        ask(asked, ReproductionTried.class, f -> List.of(f.how()));
        ask(asked, CheckPlanned.class, f -> List.of(f.what(), f.expectation()));
        // with an answer to the check's question no text is asked for: it is made from the answer
        ask(asked, ResultRecorded.class, f -> f.answer() == null ? List.of(f.observation()) : List.of());
        ask(asked, ActionPlanned.class, f -> List.of(f.what(), f.effect(), f.impact()));
        ask(asked, PartFitChecked.class, f -> List.of(f.basis()));
        ask(asked, SymptomRechecked.class, f -> List.of(f.how()));
        ask(asked, SummaryWritten.class, f -> List.of(f.findings(), f.actions(), f.outcome()));
        return asked;
    }

    private static <F extends Fact> void ask(
            Map<Class<? extends Fact>, Function<Fact, List<String>>> asked,
            Class<F> kind,
            Function<F, List<String>> texts) {
        asked.put(kind, fact -> texts.apply(kind.cast(fact)));
    }

    /**
     * @param sheet as it was when the ticket ended
     * @param trail up to the entry with which it ended
     * @param usualMinutes of the check that answers a finding of the catalogue; 0 where that is not known
     * @param numbers of the rules
     */
    static SignalTrace of(
            String ticket,
            JobSheet sheet,
            List<Entry> trail,
            ToDoubleFunction<String> usualMinutes,
            SignalNumbers numbers) {
        List<Signal> own = new ArrayList<>();
        add(own, ticket, SignalKind.SHORT_TEXT, shortText(sheet, numbers));
        add(own, ticket, SignalKind.EXPECTATION_JUST_BEFORE, justBefore(sheet, usualMinutes, numbers));
        List<Stay> stays = stays(trail);
        add(own, ticket, SignalKind.BATCH_ENTRY, batch(stays, numbers));
        add(own, ticket, SignalKind.LEFT_AT_ONCE, atOnce(stays, numbers.leftWithin()));
        add(own, ticket, SignalKind.NO_NEW_EVIDENCE, noNewEvidence(sheet));
        Entry last = trail.get(trail.size() - 1);
        return new SignalTrace(
                ticket,
                List.copyOf(own),
                texts(sheet),
                shingles(
                        sheet.all(SummaryWritten.class).stream()
                                .flatMap(s -> s.fact().story().stream())
                                .toList(),
                        numbers.wordsInARow()),
                values(sheet),
                last.fact() instanceof Closed ? last.stamp().person() : "",
                last.stamp().at());
    }

    private static void add(List<Signal> own, String ticket, SignalKind kind, Optional<String> detail) {
        detail.ifPresent(d -> own.add(new Signal(ticket, kind, d)));
    }

    private static List<String> askedOf(Fact fact) {
        Function<Fact, List<String>> texts = ASKED.get(fact.getClass());
        return texts == null
                ? List.of()
                : texts.apply(fact).stream().filter(t -> !t.isBlank()).toList();
    }

    private static Optional<String> shortText(JobSheet sheet, SignalNumbers numbers) {
        return sheet.facts().stream()
                .filter(f -> askedOf(f.fact()).stream().anyMatch(text -> isShort(text, numbers)))
                .findFirst()
                .map(f -> "entry " + f.entry());
    }

    static boolean isShort(String text, SignalNumbers numbers) {
        return text.strip().codePoints().count() < numbers.shortText()
                || parted(text).distinct().limit(numbers.fewestWords()).count() < numbers.fewestWords();
    }

    static List<String> words(String text) {
        return parted(text).toList();
    }

    private static Stream<String> parted(String text) {
        return BETWEEN_WORDS.splitAsStream(text.toLowerCase(Locale.ROOT)).filter(word -> !word.isEmpty());
    }

    private static List<Text> texts(JobSheet sheet) {
        return sheet.facts().stream()
                .flatMap(f -> askedOf(f.fact()).stream()
                        .map(t -> new Text(f.entry(), f.stamp().person(), String.join(" ", folded(t)))))
                .toList();
    }

    private static List<String> folded(String text) {
        return List.of(BLANKS.split(text.strip().toLowerCase(Locale.ROOT), -1));
    }

    /** All runs of so many words. */
    static Set<String> shingles(List<String> texts, int inARow) {
        Set<String> runs = new HashSet<>();
        for (String text : texts) {
            List<String> words = words(text);
            for (int i = 0; i + inARow <= words.size(); i++) {
                runs.add(String.join(" ", words.subList(i, i + inARow)));
            }
        }
        return runs;
    }

    private static List<Value> values(JobSheet sheet) {
        int work = sheet.lastWork();
        boolean repaired = work > sheet.course().roundStart();
        return sheet.all(ReadingRecorded.class).stream()
                .map(r -> new Value(
                        r.entry(),
                        r.stamp().at(),
                        String.join(
                                "\n",
                                folded(r.fact().quantity() + "\n" + r.fact().unit() + "\n"
                                        + r.fact().point())),
                        r.fact().value(),
                        repaired && r.isAfter(work)))
                .toList();
    }

    /** Whether the last digit of a value is worth less than a hundredth of it. */
    static boolean isFine(String digits) {
        BigDecimal value = new BigDecimal(digits);
        return value.abs().compareTo(value.ulp().multiply(HUNDRED)) > 0;
    }

    private static Optional<String> justBefore(
            JobSheet sheet, ToDoubleFunction<String> usualMinutes, SignalNumbers numbers) {
        for (StandingFact<ResultRecorded> result : sheet.all(ResultRecorded.class)) {
            Optional<StandingFact<CheckPlanned>> check = sheet.latest(
                    CheckPlanned.class, c -> c.entry() == result.fact().check());
            if (check.isPresent() && isJustBefore(check.orElseThrow(), result, usualMinutes, numbers)) {
                return Optional.of("entries " + check.orElseThrow().entry() + " and " + result.entry());
            }
        }
        return Optional.empty();
    }

    private static boolean isJustBefore(
            StandingFact<CheckPlanned> check,
            StandingFact<ResultRecorded> result,
            ToDoubleFunction<String> usualMinutes,
            SignalNumbers numbers) {
        String finding = check.fact().finding();
        Duration between = Duration.between(check.stamp().at(), result.stamp().at());
        return finding != null
                && usualMinutes.applyAsDouble(finding) > numbers.usualTime().toSeconds() / SECONDS
                && between.compareTo(numbers.justBefore()) < 0;
    }

    private static Optional<String> noNewEvidence(JobSheet sheet) {
        int work = sheet.lastWork();
        boolean repaired = work > sheet.course().roundStart() && sheet.course().standing() == Standing.CLOSED;
        boolean shown = sheet.all(ReadingRecorded.class).stream().anyMatch(r -> r.isAfter(work))
                || sheet.all(AttachmentAdded.class).stream()
                        .anyMatch(a -> a.isAfter(work) && a.fact().countsAsEvidence())
                || sheet.all(ResultRecorded.class).stream().anyMatch(r -> r.isAfter(work));
        return repaired && !shown ? Optional.of("after entry " + work) : Optional.empty();
    }

    /**
     * A step from its beginning to its end.
     *
     * @param from null where no step was before it: the ticket had waited for somebody
     * @param left whether the work went on from it, and did not only end
     */
    private record Stay(Step step, @Nullable Instant from, Instant to, boolean left, List<Stamp> facts) {}

    private static List<Stay> stays(List<Entry> trail) {
        List<Stay> stays = new ArrayList<>();
        Course course = Course.opened((Opened) trail.get(0).fact(), trail.get(0).stamp());
        Instant from = null;
        List<Stamp> facts = new ArrayList<>();
        for (Entry entry : trail.subList(1, trail.size())) {
            Stamp stamp = entry.stamp();
            if (entry.fact() instanceof MoveFact move) {
                Course next = move.after(course, stamp);
                boolean again = move.move() == Move.REOPEN;
                if (next.step() != course.step() || next.standing() != course.standing()) {
                    stays.add(new Stay(
                            course.step(),
                            from,
                            stamp.at(),
                            !again && move.move().changesStep(),
                            facts));
                    from = again ? null : stamp.at();
                    facts = new ArrayList<>();
                }
                course = next;
            } else if (entry.fact().step() == course.step() && !stamp.by().equals(Stamp.SERVER)) {
                facts.add(stamp);
            }
        }
        return stays;
    }

    private static Optional<String> atOnce(List<Stay> stays, Duration leftWithin) {
        return stays.stream()
                .filter(s -> s.from() != null
                        && s.left()
                        && !within(s.from(), leftWithin).isBefore(s.to()))
                .findFirst()
                .map(s -> s.step().title());
    }

    private static Instant within(@Nullable Instant from, Duration time) {
        return from == null ? Instant.MIN : from.plus(time);
    }

    private static Optional<String> batch(List<Stay> stays, SignalNumbers numbers) {
        for (Stay stay : stays) {
            List<Stamp> facts = stay.facts();
            for (int i = 0; stay.from() != null && i + numbers.batch() <= facts.size(); i++) {
                Instant first = facts.get(i).at();
                Instant last = facts.get(i + numbers.batch() - 1).at();
                if (first.isAfter(within(stay.from(), numbers.batchLate()))
                        && !last.isAfter(first.plus(numbers.batchWithin()))) {
                    return Optional.of("entries " + facts.get(i).entry() + " to "
                            + facts.get(i + numbers.batch() - 1).entry());
                }
            }
        }
        return Optional.empty();
    }
}
