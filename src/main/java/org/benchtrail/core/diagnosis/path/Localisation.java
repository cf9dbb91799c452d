package org.benchtrail.core.diagnosis.path;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.Model;
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
            Map<String, String> withheld,
            List<Segment> questions,
            List<Segment> contradicted,
            List<Report> setAside) {
        this.placed = placed;
        this.ranking = ranking;
        this.surprise = surprise;
        this.advice = advice;
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

    /** The segments that are there, in the order of the file, with the belief that the fault is in each. */
    public Map<String, Double> masses() {
        return Collections.unmodifiableMap(masses);
    }

    /** Belief that the fault is in none of the places. */
    public double outside() {
        return ranking.probability(Model.UNLISTED);
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
        return placed.tests().stream().filter(t -> t.id().equals(id)).findFirst();
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

    Layout layout() {
        return placed.layout();
    }

    List<PlacedPart> places() {
        return placed.places();
    }
}
