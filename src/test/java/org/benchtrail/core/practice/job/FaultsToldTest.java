package org.benchtrail.core.practice.job;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.BesideOthers;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What a device answers points at what is wrong with it, on average: under its own fault its answers are likelier than under any
 * other (J. W. Gibbs: the mean logarithm of a chance is greatest under the true ones; textbook). How likely they are is counted on
 * one half of the seeds and held against the other half, as if the answers of a device were independent, so that two faults that
 * show the same are found out: {@code -Dpractice.told=1000} is the long form.
 */
@BesideOthers
class FaultsToldTest {
    private static final int SEEDS = Integer.getInteger("practice.told", 60);
    private static final int BINS = 8;

    /** Standard errors by which the mean has to be greater, so that chance alone does not do it. */
    private static final double CLEARLY = 3;

    /** What is prudent before an act, each once, and the act. */
    private static String answer(PracticeDevice start, DeviceAct act) {
        PracticeDevice now = start;
        for (DeviceAct before : prepared(act)) {
            now = now.act(before).after();
        }
        Seen seen = now.act(act).seen();
        return seen == null ? Seen.UNKNOWN : seen.value();
    }

    private static Set<DeviceAct> prepared(DeviceAct act) {
        Set<DeviceAct> all = new LinkedHashSet<>();
        act.prudent().forEach(p -> all.addAll(prepared(p)));
        all.addAll(act.prudent());
        return all;
    }

    private static List<DeviceAct> asked(Family family) {
        return family.acts().stream()
                .filter(a -> a.way() == DeviceAct.Way.ASK
                        || a.way() == DeviceAct.Way.LOOK
                        || a.way() == DeviceAct.Way.MEASURE)
                .toList();
    }

    /** By fault, by seed, by act. */
    private static Map<String, String[][]> answers(Family family, List<DeviceAct> acts) {
        Map<String, String[][]> all = new HashMap<>();
        for (String fault : family.faults()) {
            String[][] rows = new String[SEEDS][acts.size()];
            for (int i = 0; i < SEEDS; i++) {
                String seed = HexFormat.of()
                        .formatHex(
                                ByteBuffer.allocate(32).putInt(28, 31_000 + i).array());
                PracticeDevice device = new Truth(family, seed, fault).start();
                for (int a = 0; a < acts.size(); a++) {
                    rows[i][a] = answer(device, acts.get(a));
                }
            }
            all.put(fault, rows);
        }
        return all;
    }

    /** Numbers fall into bins that hold about as many each; words are their own bins. */
    private static void binned(Map<String, String[][]> answers, int act) {
        double[] numbers = answers.values().stream()
                .flatMap(Arrays::stream)
                .map(row -> row[act])
                .filter(FaultsToldTest::isNumber)
                .mapToDouble(Double::parseDouble)
                .sorted()
                .toArray();
        for (String[][] rows : answers.values()) {
            for (String[] row : rows) {
                if (isNumber(row[act])) {
                    double value = Double.parseDouble(row[act]);
                    int bin = 0;
                    for (int b = 1; b < BINS; b++) {
                        bin += value > numbers[b * numbers.length / BINS] ? 1 : 0;
                    }
                    row[act] = "bin " + bin;
                }
            }
        }
    }

    private static boolean isNumber(String value) {
        return !value.isEmpty() && (Character.isDigit(value.charAt(value.length() - 1)));
    }

    /** ln of the chance of an answer, counted on the even seeds, each answer seen half a time more. */
    private static double log(Map<String, String[][]> answers, String fault, int act, String value, int values) {
        int hits = 0;
        String[][] rows = answers.get(fault);
        for (int i = 0; i < SEEDS; i += 2) {
            hits += rows[i][act].equals(value) ? 1 : 0;
        }
        return Math.log((hits + 0.5) / ((SEEDS + 1) / 2 + 0.5 * values));
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void answers_areLikeliestUnderTheirOwnFault(Family family) {
        List<DeviceAct> acts = asked(family);
        Map<String, String[][]> answers = answers(family, acts);
        int[] values = new int[acts.size()];
        for (int a = 0; a < acts.size(); a++) {
            binned(answers, a);
            int act = a;
            values[a] = (int) answers.values().stream()
                    .flatMap(Arrays::stream)
                    .map(row -> row[act])
                    .distinct()
                    .count();
        }
        double least = Double.POSITIVE_INFINITY;
        String nearest = "";
        for (String fault : family.faults()) {
            for (String other : family.faults()) {
                double ahead = fault.equals(other) ? Double.POSITIVE_INFINITY : ahead(answers, values, fault, other);
                if (ahead < least) {
                    least = ahead;
                    nearest = fault + " from " + other;
                }
            }
        }
        System.out.printf("%s: nearest %s, by %.1f standard errors%n", family.id(), nearest, least);
        assertTrue(least > CLEARLY, nearest + ": " + least);
    }

    /** By how many standard errors the odd seeds of a fault are likelier under it than under the other. */
    private static double ahead(Map<String, String[][]> answers, int[] values, String fault, String other) {
        List<Double> differences = new ArrayList<>();
        String[][] rows = answers.get(fault);
        for (int i = 1; i < SEEDS; i += 2) {
            double difference = 0;
            for (int a = 0; a < values.length; a++) {
                difference +=
                        log(answers, fault, a, rows[i][a], values[a]) - log(answers, other, a, rows[i][a], values[a]);
            }
            differences.add(difference);
        }
        double mean = differences.stream().mapToDouble(d -> d).average().orElseThrow();
        double squares =
                differences.stream().mapToDouble(d -> (d - mean) * (d - mean)).sum();
        double error = Math.sqrt(squares / (differences.size() - 1) / differences.size());
        return mean / Math.max(error, 1e-9);
    }
}
