package org.benchtrail.core.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Feed;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Hints;
import org.benchtrail.core.diagnosis.QuantityWords;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.CatalogueAnswer;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SymptomRecorded;

/**
 * What the facts of a job sheet say of the findings of a category: answers that were given, and what follows from other facts
 * by the catalogue's feeds. Nothing of it is written down: the same sheet and the same catalogue give the same again.
 *
 * <p>An answer drops whatever else followed for its finding, whichever came first; one that says it more exactly drops what
 * followed for the finding that it narrows. After work on the device, a later number takes the weight from earlier ones of its
 * finding; what was asked at intake keeps it.
 */
final class Hearing {
    /**
     * How far it is trusted that a complaint which was not named is not there: who has it names it in two of three cases or so.
     * Common practice, no source.
     */
    private static final double UNNAMED = 0.4;

    /** In the id of a report: it stands for what was not named beside that entry. */
    static final String NOT_NAMED = "/not-named/";

    private final JobSheet sheet;
    private final CauseCategory category;
    private final SheetReader reader;
    private final Judging judging;
    private final Map<String, Finding> findings = new LinkedHashMap<>();
    private final List<Heard> explicit = new ArrayList<>();
    private final List<Heard> derived = new ArrayList<>();
    private final Map<Integer, String> unheard = new HashMap<>();

    private Hearing(JobSheet sheet, CauseCategory category, SheetReader reader) {
        this.sheet = sheet;
        this.category = category;
        this.reader = reader;
        judging = new Judging(sheet, reader);
        category.findings().forEach(f -> findings.put(f.id(), f));
    }

    static Hearing of(JobSheet sheet, CauseCategory category, SheetReader reader) {
        Hearing hearing = new Hearing(sheet, category, reader);
        hearing.listen();
        return hearing;
    }

    /** Everything heard, in the order of the entries. */
    List<Heard> all() {
        List<Heard> all = new ArrayList<>(explicit);
        all.addAll(derived);
        all.sort(Comparator.comparingInt(h -> h.by().entry()));
        return all;
    }

    /** Why an entry weighs nothing yet, by its number: what it would bear on is known, but not what it says. */
    Map<Integer, String> unheard() {
        return Map.copyOf(unheard);
    }

    private void listen() {
        Supersession supersession = new Supersession();
        for (StandingFact<?> noted : sheet.facts()) {
            supersession.pass(noted);
            noted.fact().says(sheet).flatMap(said -> explicit(noted, said)).ifPresent(heard -> {
                explicit.add(heard);
                supersession.take(heard, explicit);
            });
        }
        if (!category.hints().equals(Hints.NONE)) {
            derive();
            unnamed();
        }
        fade();
    }

    // ---- answers that were given

    private Optional<Heard> explicit(StandingFact<?> noted, CatalogueAnswer said) {
        Finding finding = findings.get(said.finding());
        if (finding == null) {
            return Optional.empty();
        }
        String id = "entry-" + noted.entry();
        if (said.reading() != null) {
            return judged(noted, finding, said.reading(), id, Heard.Kind.EXPLICIT);
        }
        boolean known = finding.values().contains(said.value()) || Report.UNKNOWN.equals(said.value());
        Report report = Report.of(
                id, finding.id(), said.value(), said.source(), noted.stamp().at());
        return known
                ? Optional.of(new Heard(noted, finding, report, Heard.Kind.EXPLICIT, said.source(), 0))
                : Optional.empty();
    }

    private Optional<Heard> judged(
            StandingFact<?> noted, Finding finding, ReadingRecorded reading, String id, Heard.Kind kind) {
        try {
            Judging.Judged j = judging.of(finding, reading);
            Report report = new Report(
                    id, finding.id(), j.value(), j.reliability(), noted.stamp().at(), false);
            Source source = reading.accuracy() == null ? Source.SEEN : Source.CALIBRATED;
            return Optional.of(new Heard(noted, finding, report, kind, source, j.excess()));
        } catch (Invalid e) {
            unheard.put(noted.entry(), e.problems().get(0).sentence());
            return Optional.empty();
        }
    }

    // ---- what follows from other facts

    private void derive() {
        List<Heard> found = new ArrayList<>();
        for (StandingFact<?> noted : sheet.facts()) {
            noted.fact().signs(sheet).forEach(sign -> found.addAll(fed(noted, sign, Heard.Kind.INTAKE)));
        }
        for (StandingFact<BenchResultAttached> attached : sheet.all(BenchResultAttached.class)) {
            BenchSigns.of(attached.fact(), reader.again(attached.fact()).orElse(null))
                    .forEach(sign -> found.addAll(fed(attached, sign, Heard.Kind.MEASURED)));
        }
        ReadInSigns.of(sheet).forEach(given -> found.addAll(fed(given.by(), given.sign(), Heard.Kind.MEASURED)));
        for (StandingFact<ReadingRecorded> taken : sheet.all(ReadingRecorded.class)) {
            meant(taken)
                    .flatMap(f -> judged(taken, f, taken.fact(), id(taken, f), Heard.Kind.MEASURED))
                    .ifPresent(found::add);
        }
        List<Heard> told = oneOfEach(found);
        Set<String> answered = answered();
        told.removeIf(heard -> answered.contains(heard.finding().id()));
        told.sort(Comparator.comparingInt(h -> h.by().entry()));
        Supersession supersession = new Supersession();
        int next = 0;
        for (StandingFact<?> noted : sheet.facts()) {
            supersession.pass(noted);
            while (next < told.size() && told.get(next).by().entry() == noted.entry()) {
                Heard heard = told.get(next++);
                derived.add(heard);
                if (heard.kind() == Heard.Kind.MEASURED) {
                    supersession.take(heard, derived);
                }
            }
        }
    }

    /** Complaints that were not named beside one that was, unless the words of the sheet suggest them. */
    private void unnamed() {
        List<Heard> heard = Stream.concat(explicit.stream(), derived.stream())
                .filter(Heard::informs)
                .toList();
        Set<String> complaints = new LinkedHashSet<>(category.hints().complaints());
        Optional<Heard> named = heard.stream()
                .filter(h -> complaints.contains(h.finding().id()) && !h.isNormal())
                .min(Comparator.comparingInt(h -> h.by().entry()));
        heard.forEach(h -> complaints.remove(h.finding().id()));
        named.ifPresent(one -> {
            Suggestions.suggested(sheet, category).forEach(complaints::remove);
            complaints.stream()
                    .map(findings::get)
                    .flatMap(Stream::ofNullable)
                    .forEach(f -> derived.add(unnamed(one.by(), f)));
        });
    }

    private static Heard unnamed(StandingFact<?> beside, Finding finding) {
        Report report = new Report(
                "entry-" + beside.entry() + NOT_NAMED + finding.id(),
                finding.id(),
                finding.usual(),
                UNNAMED,
                beside.stamp().at(),
                false,
                true);
        return new Heard(beside, finding, report, Heard.Kind.UNNAMED, Source.PRESUMED, 0);
    }

    private static String id(StandingFact<?> noted, Finding finding) {
        return "entry-" + noted.entry() + "/" + finding.id();
    }

    private List<Heard> fed(StandingFact<?> noted, Sign sign, Heard.Kind kind) {
        return category.hints().feeds().stream()
                .filter(feed -> feed.sign().equals(sign.name()))
                .flatMap(feed -> fed(noted, sign, feed, kind).stream())
                .toList();
    }

    private Optional<Heard> fed(StandingFact<?> noted, Sign sign, Feed feed, Heard.Kind kind) {
        Finding finding = Objects.requireNonNull(findings.get(feed.finding()));
        String value = feed.value();
        double reliability = feed.source().reliability();
        double excess = 0;
        if (sign.measured() != null) {
            try {
                Judging.Judged j = judging.of(finding, sign.measured(), reliability);
                value = j.value();
                reliability = j.reliability();
                excess = j.excess();
            } catch (Invalid e) {
                unheard.put(noted.entry(), e.problems().get(0).sentence());
                return Optional.empty();
            }
        }
        boolean presumed = feed.source() == Source.PRESUMED;
        Report report = new Report(
                id(noted, finding),
                finding.id(),
                value,
                reliability,
                noted.stamp().at(),
                false,
                presumed);
        return Optional.of(new Heard(noted, finding, report, kind, feed.source(), excess));
    }

    /** The one finding that a reading is of by its words, where nobody said. */
    private Optional<Finding> meant(StandingFact<ReadingRecorded> taken) {
        if (taken.fact().finding() != null) {
            return Optional.empty();
        }
        List<Finding> meant = meant(category, taken.fact());
        return meant.size() == 1 ? Optional.of(meant.get(0)) : Optional.empty();
    }

    /** The findings that a reading may be of by its words and its unit. */
    static List<Finding> meant(CauseCategory category, ReadingRecorded reading) {
        String words = reading.quantity() + " " + reading.point();
        boolean own = reading.lower() != null || reading.upper() != null;
        Set<String> ids = category.hints().readings().stream()
                .filter(r -> r.match(words) && Judging.isOf(r.unit(), reading.unit(), own))
                .map(QuantityWords::finding)
                .collect(Collectors.toSet());
        return category.findings().stream().filter(f -> ids.contains(f.id())).toList();
    }

    /** Several numbers of one request for one finding count once: the one farthest out. So do like answers of intake. */
    private static List<Heard> oneOfEach(List<Heard> found) {
        Map<String, Heard> kept = new LinkedHashMap<>();
        for (Heard heard : found) {
            String at = heard.kind() == Heard.Kind.INTAKE
                    ? heard.report().value()
                    : heard.by().stamp().request();
            String key = heard.finding().id() + " " + heard.kind() + " " + at;
            kept.merge(key, heard, (one, other) -> other.excess() > one.excess() ? other : one);
        }
        return new ArrayList<>(kept.values());
    }

    /** Findings with an answer that says something, and those that such an answer narrows. */
    private Set<String> answered() {
        Set<String> answered = new HashSet<>();
        explicit.stream().filter(Heard::informs).map(Heard::finding).forEach(f -> {
            answered.add(f.id());
            if (f.making() != null && f.making().narrows() != null) {
                answered.add(f.making().narrows());
            }
        });
        return answered;
    }

    // ---- what comes and goes

    /** What is seen only while the fault shows says little where it was not seen, if the fault comes and goes. */
    private void fade() {
        boolean comesAndGoes =
                sheet.all(SymptomRecorded.class).stream().anyMatch(s -> s.fact().intermittent())
                        || sheet.latest(ReproductionTried.class)
                                .filter(r -> r.fact().outcome() == Reproduction.INTERMITTENT)
                                .isPresent();
        if (comesAndGoes) {
            explicit.replaceAll(Hearing::faded);
            derived.replaceAll(Hearing::faded);
        }
    }

    private static Heard faded(Heard heard) {
        return heard.finding().fleeting() && heard.isNormal()
                ? heard.with(heard.report().atMost(Source.INTERMITTENT.reliability()))
                : heard;
    }

    /** What was seen before work on the device loses its weight to what is seen after it. */
    private static final class Supersession {
        private final Map<String, Integer> answeredAt = new HashMap<>();
        private int lastWork;

        void pass(StandingFact<?> noted) {
            if (noted.fact().changesDevice()) {
                lastWork = noted.entry();
            }
        }

        /** The last of the list is the one taken. */
        void take(Heard heard, List<Heard> list) {
            String finding = heard.finding().id();
            if (answeredAt.getOrDefault(finding, Integer.MAX_VALUE) < lastWork) {
                for (int k = 0; k < list.size() - 1; k++) {
                    Heard earlier = list.get(k);
                    if (earlier.finding().id().equals(finding) && earlier.kind() == heard.kind()) {
                        list.set(k, earlier.with(earlier.report().supersede()));
                    }
                }
            }
            answeredAt.put(finding, heard.by().entry());
        }
    }
}
