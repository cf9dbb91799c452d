package org.benchtrail.core.diagnosis.path;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Phrase;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Surprise;

/**
 * Where the fault of one ticket is, what it is, and what to do next. Advice only: the technician chooses.
 *
 * <p>{@link #advice()} names listed findings, tests made from the structure (see {@link GenericTest}), causes, shared repairs and
 * repairs of a segment ({@code segment:s}) by their ids.
 */
public final class Localisation {
    private final PlacedModel placed;
    private final Ranking ranking;
    private final Surprise surprise;
    private final Advice advice;
    private final BenchSituation situation;
    private final Optional<Action> placing;
    private final TestOrder.Order order;
    private final Map<String, String> withheld;
    private final List<Segment> questions;
    private final List<Segment> contradicted;
    private final List<Report> setAside;
    private final Map<String, Double> masses;

    Localisation(
            PlacedModel placed,
            Ranking ranking,
            Surprise surprise,
            Advice advice,
            BenchSituation situation,
            Optional<Action> placing,
            TestOrder.Order order,
            Map<String, String> withheld,
            List<Segment> questions,
            List<Segment> contradicted,
            List<Report> setAside) {
        this.placed = placed;
        this.ranking = ranking;
        this.surprise = surprise;
        this.advice = advice;
        this.situation = situation;
        this.placing = placing;
        this.order = order;
        this.withheld = new LinkedHashMap<>(withheld);
        this.questions = List.copyOf(questions);
        this.contradicted = List.copyOf(contradicted);
        this.setAside = List.copyOf(setAside);
        masses = placed.masses(ranking.partProbabilities());
    }

    /** Over the causes of the catalogue that can be on this ticket and one {@code else:segment} for each place. */
    public Model model() {
        return placed.model();
    }

    public Ranking ranking() {
        return ranking;
    }

    public Surprise surprise() {
        return surprise;
    }

    public Advice advice() {
        return advice;
    }

    /** What holds on the bench, with what the structure withholds and what has to be set up. */
    public BenchSituation situation() {
        return situation;
    }

    /**
     * The test to make if the fault is to be placed: of those that are as good as the best within the threshold of the advice, the
     * one after which the place is least in doubt. Empty if none is on offer.
     */
    public Optional<Action> placing() {
        return placing;
    }

    /** The tests on offer that are worth their time, in the order in which they are best made. */
    public List<Action> order() {
        return order.all();
    }

    /** Those of {@link #order} that are not worth far less than the first. */
    public List<Action> near() {
        return order.near();
    }

    /** The first test on offer that settles the leading listed cause; empty if all were made. */
    public Optional<Action> settling() {
        Set<String> tests = placed.subjects().settling(ranking.topListed());
        return order.all().stream().filter(a -> tests.contains(a.id())).findFirst();
    }

    /** The places in which something that was tried took the fault away; none where nothing did. */
    public Set<String> mended() {
        return new Settled(placed, ranking).mended();
    }

    /** The listed cause that leads, if what proves it was seen. */
    public Optional<String> proven() {
        return new Settled(placed, ranking).proven();
    }

    /** How much of the belief in what a repair covers lies in some places. */
    public double beliefIn(Set<String> segments, Set<String> ids) {
        double[] p = ranking.partProbabilities();
        double sum = 0;
        for (int k = 0; k < placed.places().size(); k++) {
            PlacedPart place = placed.places().get(k);
            boolean named = ids.contains(place.part()) || ids.contains(place.cause());
            sum += named && segments.contains(place.segment()) ? p[k] : 0;
        }
        return sum;
    }

    /** The segments that are there, in the order of the file, with the belief that the fault is in each. */
    public Map<String, Double> masses() {
        return Collections.unmodifiableMap(masses);
    }

    /** Belief that the fault is in none of the places. */
    public double outside() {
        return ranking.probability(Model.UNLISTED);
    }

    /** Belief in some causes, or parts of them, by their ids. */
    public double belief(Set<String> ids) {
        double[] p = ranking.partProbabilities();
        double sum = 0;
        for (int k = 0; k < placed.places().size(); k++) {
            PlacedPart place = placed.places().get(k);
            sum += ids.contains(place.part()) || ids.contains(place.cause()) ? p[k] : 0;
        }
        return sum;
    }

    /** Belief in causes that nobody listed, in whatever place. */
    public double unnamed() {
        return placed.places().stream()
                .filter(p -> !p.isListed())
                .mapToDouble(p -> ranking.probability(p.cause()))
                .sum();
    }

    /** The shortest stretch that most of the belief lies in; empty as long as nothing is placed. */
    public Optional<Stretch> stretch() {
        return Stretch.of(placed.layout(), masses);
    }

    /** A test made from the structure by its id. */
    public Optional<GenericTest> test(String id) {
        return Optional.ofNullable(placed.subjects().made().get(id));
    }

    /** By id the segments that a log can name here, with the words that name each. */
    public Map<String, List<Phrase>> nameable() {
        Map<String, List<Phrase>> words = new LinkedHashMap<>();
        test(GenericTest.LOG)
                .ifPresent(log -> log.values()
                        .forEach(s ->
                                words.put(s, placed.layout().paths().words().getOrDefault(s, List.of()))));
        return words;
    }

    /** An outcome of a test in words: a log answers with the name of what it names. */
    public String words(String test, String value) {
        boolean names = test(test).filter(t -> t.act() == PathAct.LOG).isPresent();
        return names ? placed.layout().paths().segment(value).map(Segment::name).orElse(value) : value;
    }

    /** All tests that the structure makes here, on offer or not. */
    public List<GenericTest> tests() {
        return placed.tests();
    }

    /** Tests that are not offered, by id, with the reason. */
    public Map<String, String> withheld() {
        return Collections.unmodifiableMap(withheld);
    }

    /** Segments of which nobody said yet whether they are there. */
    public List<Segment> questions() {
        return questions;
    }

    /** Segments said to be absent, although something was recorded about them: ask again. */
    public List<Segment> contradicted() {
        return contradicted;
    }

    /** Reports that weigh nothing, because what they are about is not there. */
    public List<Report> setAside() {
        return setAside;
    }

    /** The segment in which most of the belief in a cause lies; empty for one that is in none. */
    Optional<String> heaviest(String cause) {
        double[] p = ranking.partProbabilities();
        String best = "";
        double most = -1;
        for (int k = 0; k < placed.places().size(); k++) {
            PlacedPart part = placed.places().get(k);
            if (part.cause().equals(cause) && p[k] > most) {
                most = p[k];
                best = part.segment();
            }
        }
        return Optional.of(best).filter(s -> !s.isEmpty());
    }

    Layout layout() {
        return placed.layout();
    }

    List<PlacedPart> places() {
        return placed.places();
    }
}
