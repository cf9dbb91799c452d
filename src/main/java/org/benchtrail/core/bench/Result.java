package org.benchtrail.core.bench;

import java.util.List;
import org.benchtrail.core.measure.Provenance;

/**
 * What a calculation answers. Nothing here says that something is safe: it says what the figures are and how they were got.
 *
 * @param judgement the verdict, with the words of the trade
 * @param figures the results, each with its unit
 * @param rules for fit and plan calculations: each rule applied, with its outcome and where it comes from; else empty
 * @param working the steps with the numbers put in, in order, so that a pocket calculator can follow
 * @param assumptions what was taken for granted
 * @param cautions codes of cautions that the answer raises, see {@code org.benchtrail.core.method.Caution}
 * @param curves what people would rather look at than read
 */
public record Result(
        Judgement judgement,
        List<Figure> figures,
        List<Rule> rules,
        List<Working> working,
        List<String> assumptions,
        List<String> cautions,
        List<Curve> curves) {

    public Result {
        figures = List.copyOf(figures);
        rules = List.copyOf(rules);
        working = List.copyOf(working);
        assumptions = List.copyOf(assumptions);
        cautions = List.copyOf(cautions);
        curves = List.copyOf(curves);
    }

    /** How an answer is to be taken; pages show it by word and shape, never by tint alone. */
    public enum Level {
        GOOD,
        CAREFUL,
        BAD,
        UNDECIDED,
        /** A figure was asked for, not a verdict. */
        NONE
    }

    /** The verdict: its level, a few words ("fits with a warning"), and one sentence that gives the reason with numbers. */
    public record Judgement(Level level, String words, String reason) {}

    /** A result with its unit; {@code digits} is how many significant digits are worth showing (1 to 15). */
    public record Figure(String name, double value, String unit, int digits) {
        /** The value as it is shown; a share that is next to nothing, or next to all, is said to be so. */
        public String text() {
            return unit.equals("%") ? Numeral.share(value, digits) : Numeral.of(value, digits);
        }
    }

    /** One rule applied: what it says, whether it is met, the title it comes from, and how well it is founded on that. */
    public record Rule(String name, Level outcome, String sentence, String source, Provenance provenance) {}

    /** One line of working: what is computed, the formula in symbols, and the same with the numbers put in and the result. */
    public record Working(String what, String formula, String withNumbers) {}

    /** Points of a line; x strictly increasing. A horizontal limit is a curve of two points with the same y. */
    public record Curve(String title, String xLabel, String xUnit, String yLabel, String yUnit, List<Point> points) {
        public Curve {
            points = List.copyOf(points);
        }
    }

    public record Point(double x, double y) {}
}
