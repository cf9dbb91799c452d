package org.benchtrail.core.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Figure;
import org.benchtrail.core.bench.Result.Judgement;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.Result.Rule;
import org.benchtrail.core.bench.Result.Working;
import org.benchtrail.core.measure.Share;

/**
 * A result while it is being written. A figure and the line of working that leads to it are made by one call, so that they
 * cannot differ.
 */
public final class ResultDraft {
    private final List<Figure> figures = new ArrayList<>();
    private final List<Rule> rules = new ArrayList<>();
    private final List<Working> working = new ArrayList<>();
    private final List<String> assumptions = new ArrayList<>();
    private final List<String> cautions = new ArrayList<>();
    private final List<Curve> curves = new ArrayList<>();

    /**
     * A figure with its line of working.
     *
     * @param put the right-hand side of the formula with the numbers put in, without the result
     * @return the value, for the next step
     */
    public double figure(String name, String formula, String put, double value, String unit, int digits) {
        double plain = step(name, formula, put, value, unit, digits);
        figures.add(new Figure(name, plain, unit, digits));
        return plain;
    }

    /**
     * A chance that is neither none nor certain, however near it comes: as a share in percent, so that figure, working and
     * sentence say it by one rule.
     *
     * @param probability from 0 to 1
     * @return the chance in percent, above 0 and below 100
     */
    public double chance(String name, String formula, String put, double probability, int digits) {
        return figure(name, formula, put, Share.ofChance(probability), "%", digits);
    }

    /** A line of working whose outcome is needed further down but is no figure of its own; returns the value. */
    public double step(String what, String formula, String put, double value, String unit, int digits) {
        double plain = value + 0.0; // no minus zero
        working.add(
                new Working(what, formula, put + " = " + new Figure(what, plain, unit, digits).text() + suffix(unit)));
        return plain;
    }

    /** A line of working in words: a look-up or a comparison. */
    public ResultDraft say(String what, String formula, String withNumbers) {
        working.add(new Working(what, formula, withNumbers));
        return this;
    }

    private static String suffix(String unit) {
        return unit.equals("1") ? "" : " " + unit;
    }

    public ResultDraft rule(String name, Level outcome, String sentence, Citation source) {
        rules.add(new Rule(name, outcome, sentence, source.title(), source.provenance()));
        return this;
    }

    public ResultDraft assume(String sentence) {
        assumptions.add(sentence);
        return this;
    }

    /** Raises a caution by its code; one raised twice is told once. */
    public ResultDraft caution(String code) {
        if (!cautions.contains(code)) {
            cautions.add(code);
        }
        return this;
    }

    public ResultDraft curve(Curve curve) {
        curves.add(curve);
        return this;
    }

    /** Samples a function at {@code count} evenly spaced places from {@code low} to {@code high}. */
    public static List<Point> sample(double low, double high, int count, DoubleUnaryOperator function) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double x = low + (high - low) * i / (count - 1);
            points.add(new Point(x, function.applyAsDouble(x)));
        }
        return points;
    }

    public List<Rule> rules() {
        return List.copyOf(rules);
    }

    public Result judged(Level level, String words, String reason) {
        return new Result(new Judgement(level, words, reason), figures, rules, working, assumptions, cautions, curves);
    }
}
