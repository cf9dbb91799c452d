package org.benchtrail.core.advice;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Phrases;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.diagnosis.path.GenericTest;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.diagnosis.path.PathAct;
import org.benchtrail.core.diagnosis.path.Segment;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Works tickets in plain words as a technician would who follows the advice, and counts what it shows before the first test, and
 * after one and two: how many of the tests that are shown are sensible, and in how many of these moments something useful comes
 * first, a sensible test or, where none is shown, the right repair; so that showing less is no gain. What is sensible was written
 * down beforehand, see the head of the file, and nothing is once the fault is gone. With {@code -Dtickets.print=open}, or another
 * of the files, everything that is shown is written to the console.
 */
@BesideOthers
class PlainTicketsTest {
    private static final int TESTS = 4;
    /** What is shown before the first test, and after so many, is judged. */
    private static final int JUDGED = 2;

    private static final double HARDLY = 0.05;
    /** By kind, tests that are one act in other words: whichever is on the list, the others are. */
    private static final Map<String, List<Set<String>>> SAME_ACT = Map.of(
            "power", List.of(Set.of("sister:1", "point:feed.outlet", "point:feed.strip")),
            "wired", List.of(Set.of("sister:1", "point:link.adapter")),
            "display", List.of(Set.of("d2", "point:image.graphics")));

    /** What a technician takes for a cure when it comes out so. */
    private static final Set<PathAct> CURES = Set.of(PathAct.RESEAT, PathAct.SUBSTITUTE, PathAct.BYPASS, PathAct.UNDO);

    private final Map<String, Integer> counts = new TreeMap<>();

    @ParameterizedTest
    @CsvSource({
        "open, 0.93, 0.86, 0.90, 0.96, 0.04",
        "held-out, 0.53, 0.60, 0.76, 0.90, 0.04",
        "second-open, 0.60, 0.63, 0.80, 0.93, 0.12",
        "second-held-out, 0.63, 0.55, 0.67, 0.90, 0.13",
        "third-open, 0.50, 0.48, 0.74, 0.80, 0.10",
        "third-held-out, 0.43, 0.24, 0.56, 0.93, 0.09"
    })
    void tickets_workedByTheirAdvice(
            String half, double untapped, double shown, double useful, double placed, double wrong) {
        StringWriter text = new StringWriter();
        PrintWriter out = new PrintWriter(text);
        String print = System.getProperty("tickets.print", "");
        for (PlainTickets.Row ticket : PlainTickets.read("/diagnosis/plain-tickets-" + half + ".yaml")) {
            new Work(ticket, ticket, out).work();
        }
        if (print.equals(half)) {
            System.out.println(text);
        }
        if (print.equals(half) || print.equals("sums")) {
            counts.forEach((what, n) -> System.out.println("SUM " + half + " " + what + ": " + n));
        }
        // a little below what was reached
        assertTrue(share("untapped first sensible") >= untapped, counts.toString());
        assertTrue(share("shown sensible") >= shown, counts.toString());
        assertTrue(share("useful") >= useful, counts.toString());
        assertTrue(share("after 2 cause in three or segment") >= placed, counts.toString());
        assertTrue(share("repair wrong") < wrong, counts.toString());
    }

    private double share(String what) {
        return counts.getOrDefault(what, 0) / (double) counts.getOrDefault(what + " of", 1);
    }

    private void count(String what, boolean yes) {
        counts.merge(what + " of", 1, Integer::sum);
        counts.merge(what, yes ? 1 : 0, Integer::sum);
    }

    /** One ticket. */
    private final class Work {
        private final PlainTickets.Row ticket;
        private final PlainTickets.Row note;
        private final PrintWriter out;
        private final HeatSheet sheet;
        private final Localiser places;
        private final Set<String> good;
        /** What tests show, where somebody wrote it down. */
        private final Map<String, String> answers;
        /** Something that was tried took the fault away. */
        private boolean cured;

        Work(PlainTickets.Row ticket, PlainTickets.Row note, PrintWriter out) {
            this.ticket = ticket;
            this.note = note;
            this.out = out;
            sheet = PlainTickets.sheet(ticket, note);
            places = PlainTickets.places(sheet);
            good = strings(note.list("good"));
            answers = Stream.concat(note.pairs("answers"), note.pairs("answered"))
                    .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
            note.pairs("also").map(Map.Entry::getKey).forEach(good::add);
            SAME_ACT.getOrDefault(places.category().id(), List.of()).stream()
                    .filter(same -> same.stream().anyMatch(good::contains))
                    .toList()
                    .forEach(good::addAll);
        }

        private static Set<String> strings(List<?> all) {
            return all.stream().map(String::valueOf).collect(Collectors.toCollection(HashSet::new));
        }

        void work() {
            out.println("==== " + ticket.text("id") + " [" + places.category().id() + "] "
                    + ticket.text("report").replace('\n', ' '));
            out.println("  truth: " + ticket.text("truth") + "  -> " + causes() + " in " + segments());
            untapped();
            tap();
            for (int made = 0; made <= TESTS; made++) {
                Diagnosis now = PlainTickets.diagnosis(sheet);
                List<Action> tests = now.tests();
                if (made != TESTS - 1) {
                    print(made, now, tests);
                }
                if (tests.isEmpty()) {
                    boolean right = repair(now);
                    for (int later = made; later <= JUDGED; later++) {
                        count("useful", right);
                    }
                    for (int later = made + 1; later <= TESTS; later++) {
                        tally(later, now);
                    }
                    break;
                }
                if (made < TESTS) {
                    answer(now, tests.get(0));
                }
            }
        }

        /** What is shown before anybody has said whether the words are meant so. */
        private void untapped() {
            List<Action> tests = PlainTickets.diagnosis(sheet).tests();
            tests.forEach(t -> count("untapped sensible", good.contains(t.id())));
            tests.stream().limit(1).forEach(t -> count("untapped first sensible", good.contains(t.id())));
        }

        /** What the words suggest and truly fits; one tap each. */
        private void tap() {
            Diagnosis now = PlainTickets.diagnosis(sheet);
            for (Suggestions.Suggestion s : Suggestions.of(sheet.sheet(), now)) {
                String value = s.value();
                boolean fits = !value.equals(Phrases.ASK) && canBe(s.finding(), value);
                out.println("  heard '" + s.words() + "' " + s.finding() + "=" + value + " ("
                        + finding(now, s.finding()).label() + ")" + (fits ? "" : " LEFT"));
                if (fits) {
                    sheet.with(new FindingAnswered(s.finding(), s.finding() + "?", value, s.source()));
                }
            }
        }

        /** Nobody confirms what is said to be otherwise, or what the true cause hardly ever shows. */
        private boolean canBe(String finding, String value) {
            if (answers.containsKey(finding)) {
                return answers.get(finding).equals(value);
            }
            return places.category().causes().stream()
                    .filter(c -> causes().contains(c.id()))
                    .map(c -> row(c, finding))
                    .anyMatch(row -> row.getOrDefault(value, 0.0) >= HARDLY);
        }

        private Map<String, Double> row(Cause cause, String finding) {
            return cause.deviations().stream()
                    .filter(d -> d.finding().equals(finding))
                    .map(Deviation::probabilities)
                    .findFirst()
                    .or(() -> SheetEvidence.finding(places.askable(), finding).map(Finding::background))
                    .orElseThrow();
        }

        private void print(int made, Diagnosis now, List<Action> tests) {
            out.println("  -- after " + made + ": "
                    + (now.where().stretch().isPresent()
                            ? now.where().stretch().get().segments()
                            : "not placed")
                    + " "
                    + now.where().masses().entrySet().stream()
                            .sorted((a, b) -> Double.compare(b.getValue(), a.getValue()))
                            .limit(3)
                            .map(e -> e.getKey() + " " + Math.round(100 * e.getValue()))
                            .toList());
            out.println("     "
                    + now.ranking().all().stream()
                            .limit(5)
                            .map(r -> r.cause() + " " + Math.round(100 * r.probability()))
                            .toList());
            tally(made, now);
            tests(made, now, tests);
        }

        private void tally(int made, Diagnosis now) {
            boolean known = !causes().isEmpty();
            count("after " + made + " cause first", known && place(now) == 0);
            count("after " + made + " cause in three", known && place(now) >= 0 && place(now) < 3);
            boolean segment = segments().contains(heaviest(now));
            count("after " + made + " segment first", segment);
            count(
                    "after " + made + " cause in three or segment",
                    segment || (known && place(now) >= 0 && place(now) < 3));
        }

        private void tests(int made, Diagnosis now, List<Action> tests) {
            for (int k = 0; k < tests.size(); k++) {
                Action t = tests.get(k);
                Finding f = finding(now, t.id());
                boolean sensible = !cured && good.contains(t.id());
                String mark = sensible ? "+" : cured ? "c" : "-";
                out.println("     " + mark + " " + t.id() + " " + Math.round(t.minutes()) + " min: " + f.act() + " | "
                        + f.question());
                count("shown after " + made + " sensible", sensible);
                if (made <= JUDGED) {
                    count("shown sensible", sensible);
                }
                if (made <= JUDGED && k == 0) {
                    count("first sensible", sensible);
                    count("useful", sensible);
                }
            }
        }

        private String heaviest(Diagnosis now) {
            return now.where().masses().entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .map(Map.Entry::getKey)
                    .orElse("");
        }

        private int place(Diagnosis now) {
            return now.ranking().all().stream()
                    .map(Ranking.Ranked::cause)
                    .filter(id -> !id.equals(Model.UNLISTED) && !id.startsWith(Localiser.SOMETHING_ELSE))
                    .filter(id -> causes().contains(id) || now.ranking().probability(id) > best(now))
                    .toList()
                    .stream()
                    .takeWhile(id -> !causes().contains(id))
                    .toList()
                    .size();
        }

        private double best(Diagnosis now) {
            return now.ranking().all().stream()
                    .filter(r -> causes().contains(r.cause()))
                    .mapToDouble(Ranking.Ranked::probability)
                    .max()
                    .orElse(2);
        }

        /** Whether what is advised once nothing is left to test is the right repair, or to leave what cured it. */
        private boolean repair(Diagnosis now) {
            String act = now.next().map(a -> a.type() + " " + a.id()).orElse("none");
            boolean repair =
                    now.next().filter(a -> a.type() != Action.Type.ESCALATE).isPresent();
            String id = now.next().map(Action::id).orElse("");
            Set<String> covered = new HashSet<>(Set.of(id));
            now.model().category().sharedRepairs().stream()
                    .filter(s -> s.id().equals(id))
                    .forEach(s -> covered.addAll(s.fixes().keySet()));
            boolean right = covered.stream()
                    .anyMatch(c -> causes().contains(c)
                            || segments().stream()
                                    .anyMatch(s -> c.equals("segment:" + s) || c.equals(Localiser.SOMETHING_ELSE + s)));
            out.println("     => " + act + (repair ? right ? " right" : " WRONG" : ""));
            if (repair) {
                count("repair wrong", !right);
            }
            return (repair && right) || (cured && now.next().isEmpty());
        }

        private void answer(Diagnosis now, Action test) {
            Finding f = finding(now, test.id());
            String value = answers.getOrDefault(test.id(), byTruth(now, f));
            out.println(
                    "     > " + test.id() + " = " + value + (answers.containsKey(test.id()) ? "" : " (by the truth)"));
            sheet.with(new FindingAnswered(test.id(), test.id() + "?", value, Source.SEEN));
            cured |= places.paths().stands().stream()
                            .anyMatch(s -> s.finding().equals(f.id())
                                    && CURES.contains(s.act())
                                    && s.positive().equals(value))
                    || now.where()
                            .test(f.id())
                            .filter(t ->
                                    CURES.contains(t.act()) && t.values().get(1).equals(value))
                            .isPresent();
        }

        /** The value that the true cause or place shows, by the catalogue; the usual one where it does not have the cause. */
        private String byTruth(Diagnosis now, Finding f) {
            Optional<GenericTest> made = now.where().test(f.id());
            if (made.isPresent()) {
                List<String> values = f.values();
                boolean in = segments().stream()
                        .anyMatch(s ->
                                "IN".equals(String.valueOf(made.get().where().get(s))));
                if (made.get().id().equals("log")) {
                    return in
                            ? segments().stream()
                                    .filter(values::contains)
                                    .findFirst()
                                    .orElse("none")
                            : "none";
                }
                return values.get(in && canCure(made.get()) ? 1 : 0);
            }
            Optional<Cause> cause = places.category().causes().stream()
                    .filter(c -> causes().contains(c.id()))
                    .findFirst();
            Map<String, Double> row = cause.map(c -> row(c, f.id())).orElse(f.background());
            return f.values().stream()
                    .max((a, b) -> Double.compare(row.getOrDefault(a, 0.0), row.getOrDefault(b, 0.0)))
                    .orElseThrow();
        }

        /** Seating anew cures only some causes, and a good spare not all. */
        private boolean canCure(GenericTest test) {
            return places.paths().segments().stream()
                    .filter(s -> segments().contains(s.id()))
                    .anyMatch(s -> switch (test.act()) {
                        case RESEAT -> causes().stream().anyMatch(s.seating()::contains);
                        case SUBSTITUTE, BYPASS -> causes().stream().noneMatch(s.survives()::contains);
                        default -> true;
                    });
        }

        private Finding finding(Diagnosis now, String id) {
            return SheetEvidence.finding(now.model(), id)
                    .or(() -> SheetEvidence.finding(places.askable(), id))
                    .orElseThrow(() -> new IllegalStateException(id));
        }

        private Set<String> causes() {
            String kind = places.category().id() + "/";
            return new HashSet<>(note.list("cause").stream()
                    .map(c -> String.valueOf(c).contains("/") ? String.valueOf(c) : kind + c)
                    .toList());
        }

        private List<String> segments() {
            List<String> own = new ArrayList<>(strings(note.list("place")));
            if (own.isEmpty()) {
                causes().stream()
                        .flatMap(c -> places.paths().home(c).stream())
                        .map(Segment::id)
                        .forEach(own::add);
            }
            return own;
        }
    }
}
