package org.benchtrail.core.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each rule of a control chart at, under and over its bound, and how seldom each set of them rings where only chance varies. */
@BesideOthers
class ChartRulesTest {
    private static final String CHAMP_WOODALL =
            "Champ and Woodall (1987), Technometrics 29: average run lengths, printed to two places, from memory";
    private static final double OVER = Math.nextUp(3.0);

    private static List<Integer> broken(ChartRule rule, double... distances) {
        List<Integer> found = rule.broken(distances);
        double[] mirrored = new double[distances.length];
        for (int i = 0; i < mirrored.length; i++) {
            mirrored[i] = -distances[i];
        }
        assertEquals(found, rule.broken(mirrored), "the other side");
        return found;
    }

    @Test
    void one_beyondThree_notOnIt() {
        assertEquals(List.of(2), broken(ChartRule.BEYOND_THREE, 2.99, 3, OVER, -2.99));
    }

    @Test
    void two_ofThree_beyondTwo_onOneSide() {
        double over = Math.nextUp(2.0);
        assertEquals(List.of(1), broken(ChartRule.TWO_OF_THREE, over, over));
        assertEquals(List.of(2), broken(ChartRule.TWO_OF_THREE, over, 0, over));
        assertEquals(List.of(), broken(ChartRule.TWO_OF_THREE, over, 0, 0, over), "two of four");
        assertEquals(List.of(), broken(ChartRule.TWO_OF_THREE, 2, over, 2), "on the bound");
        assertEquals(List.of(), broken(ChartRule.TWO_OF_THREE, over, -over, 0), "one on each side");
        assertEquals(List.of(1), broken(ChartRule.TWO_OF_THREE, over, over, 0), "the third is not far out itself");
        assertEquals(List.of(1, 2), broken(ChartRule.TWO_OF_THREE, 5, 5, 5), "what is beyond three is beyond two");
    }

    @Test
    void four_ofFive_beyondOne_onOneSide() {
        double over = Math.nextUp(1.0);
        assertEquals(List.of(3), broken(ChartRule.FOUR_OF_FIVE, over, over, over, over));
        assertEquals(List.of(4), broken(ChartRule.FOUR_OF_FIVE, over, over, -9, over, over));
        assertEquals(List.of(), broken(ChartRule.FOUR_OF_FIVE, over, over, 0, over, 0, over), "four of six");
        assertEquals(List.of(), broken(ChartRule.FOUR_OF_FIVE, over, over, over, 1, 1), "on the bound");
        assertEquals(List.of(), broken(ChartRule.FOUR_OF_FIVE, over, over, over, -over, -over));
        assertEquals(List.of(3), broken(ChartRule.FOUR_OF_FIVE, over, over, over, over, 0.5));
    }

    @Test
    void eight_inARow_andNotSeven() {
        assertEquals(List.of(), broken(ChartRule.EIGHT_IN_A_ROW, 1, 1, 1, 1, 1, 1, 1, -1));
        assertEquals(List.of(7, 8), broken(ChartRule.EIGHT_IN_A_ROW, 1, 1, 1, 1, 1, 1, 1, 1, 1, -1));
        assertEquals(List.of(8), broken(ChartRule.EIGHT_IN_A_ROW, 1, -1, -1, -1, -1, -1, -1, -1, -1));
        assertEquals(List.of(), broken(ChartRule.EIGHT_IN_A_ROW, 1, 1, 1, 1, 0, 1, 1, 1, 1), "the centre is no side");
    }

    @ParameterizedTest
    @CsvSource({
        "370.40, BEYOND_THREE",
        "225.44, BEYOND_THREE TWO_OF_THREE",
        "166.05, BEYOND_THREE FOUR_OF_FIVE",
        "152.73, BEYOND_THREE EIGHT_IN_A_ROW",
        "91.75, BEYOND_THREE TWO_OF_THREE FOUR_OF_FIVE EIGHT_IN_A_ROW"
    })
    void falseAlarms_areAsSeldomAsIsPublished(double published, String names) {
        Set<ChartRule> rules = new TreeSet<>();
        for (String name : names.split(" ")) {
            rules.add(ChartRule.valueOf(name));
        }
        Published.check(CHAMP_WOODALL, published, between(rules), 0.006);
    }

    @Test
    void thePage_saysThem() {
        for (ChartRules rules : ChartRules.values()) {
            assertEquals(rules.betweenFalseAlarms(), Math.round(between(rules.rules())), rules.name());
        }
        assertEquals(
                "outside the limits, or eight in a row on one side (one false alarm in about 153 points)",
                ChartRules.USUAL.words());
    }

    /**
     * Expected points up to the first alarm, by the chain of what the last seven points were: the rules themselves say where it ends,
     * the normal distribution how often a point comes to lie where.
     */
    private static double between(Set<ChartRule> rules) {
        Map<Double, Double> chances = chances(rules);
        List<List<Double>> states = new ArrayList<>(List.of(List.of()));
        Map<List<Double>, Integer> known = new HashMap<>(Map.of(List.of(), 0));
        List<int[]> to = new ArrayList<>();
        List<double[]> chance = new ArrayList<>();
        for (int i = 0; i < states.size(); i++) {
            Map<List<Double>, Double> steps = steps(states.get(i), chances, rules);
            steps.keySet()
                    .forEach(state -> known.computeIfAbsent(state, s -> {
                        states.add(s);
                        return states.size() - 1;
                    }));
            to.add(steps.keySet().stream().mapToInt(known::get).toArray());
            chance.add(steps.values().stream().mapToDouble(Double::doubleValue).toArray());
        }
        double[] now = new double[states.size()];
        now[0] = 1;
        double expected = 0;
        for (double left = 1; left > 1e-7; left = DoubleStream.of(now).sum()) {
            expected += left;
            double[] next = new double[now.length];
            for (int i = 0; i < now.length; i++) {
                for (int k = 0; k < to.get(i).length; k++) {
                    next[to.get(i)[k]] += now[i] * chance.get(i)[k];
                }
            }
            now = next;
        }
        return expected;
    }

    private static Map<List<Double>, Double> steps(
            List<Double> state, Map<Double, Double> chances, Set<ChartRule> rules) {
        Map<List<Double>, Double> steps = new LinkedHashMap<>();
        chances.forEach((point, chance) -> {
            List<Double> all = new ArrayList<>(state);
            all.add(point);
            double[] distances = all.stream().mapToDouble(Double::doubleValue).toArray();
            if (rules.stream().noneMatch(r -> r.broken(distances).contains(distances.length - 1))) {
                steps.merge(remembered(all), chance, Double::sum);
            }
        });
        return steps;
    }

    /** The last seven, and of each only as much as a rule can still ask: far out of the last two, off the middle of the last four. */
    private static List<Double> remembered(List<Double> all) {
        List<Double> last = new ArrayList<>(all.subList(Math.max(0, all.size() - 7), all.size()));
        for (int back = 3; back <= last.size(); back++) {
            double most = back <= 4 ? 1.5 : 0.5;
            last.set(last.size() - back, Math.max(-most, Math.min(most, last.get(last.size() - back))));
        }
        return last;
    }

    /** Where a point may lie as far as the rules tell it apart, and how likely it does; beyond three ends at once. */
    private static Map<Double, Double> chances(Set<ChartRule> rules) {
        List<Double> bounds = new ArrayList<>(List.of(0.0));
        if (rules.contains(ChartRule.FOUR_OF_FIVE)) {
            bounds.add(1.0);
        }
        if (rules.contains(ChartRule.TWO_OF_THREE)) {
            bounds.add(2.0);
        }
        bounds.add(3.0);
        Map<Double, Double> chances = new LinkedHashMap<>();
        NormalDistribution normal = NormalDistribution.of(0, 1);
        for (int i = 1; i < bounds.size(); i++) {
            double middle = (bounds.get(i - 1) + bounds.get(i)) / 2;
            double chance = normal.probability(bounds.get(i - 1), bounds.get(i));
            chances.put(middle, chance);
            chances.put(-middle, chance);
        }
        return Collections.unmodifiableMap(chances);
    }
}
