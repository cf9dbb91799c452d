package org.benchtrail.core.statistics;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.benchtrail.core.Invalid;

/**
 * How far two readers agree beyond chance: Cohen's kappa with the standard error of Fleiss, Cohen and Everitt (1969).
 *
 * @param pairs how many were read by both
 * @param agreement share on which they agree, po
 * @param byChance share on which they would by chance, pe
 * @param kappa (po − pe)/(1 − pe); empty if all pairs are in one cell
 * @param error standard error; empty where kappa is
 */
public record Kappa(long pairs, double agreement, double byChance, OptionalDouble kappa, OptionalDouble error) {

    /** By the normal curve, within what kappa can be; empty where kappa is. */
    public Optional<Interval> interval(double confidence) {
        if (kappa.isEmpty() || error.isEmpty()) {
            return Optional.empty();
        }
        double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - Domain.confidence(confidence)) / 2);
        double reach = z * error.getAsDouble();
        return Optional.of(new Interval(
                Math.max(-1, kappa.getAsDouble() - reach), Math.min(1, kappa.getAsDouble() + reach), confidence));
    }

    /**
     * From a table of counts.
     *
     * @param table square, rows first and columns second reader; at least one pair
     */
    public static Kappa of(long[][] table) {
        int size = table.length;
        long n = Arrays.stream(table).flatMapToLong(Arrays::stream).sum();
        if (n < 1 || Arrays.stream(table).anyMatch(row -> row.length != size)) {
            throw new Invalid("table", "Give a square table with at least one pair.");
        }
        double[] rows = new double[size];
        double[] columns = new double[size];
        double agreed = 0;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                double share = (double) table[i][j] / n;
                rows[i] += share;
                columns[j] += share;
                agreed += i == j ? share : 0;
            }
        }
        double chance = 0;
        for (int i = 0; i < size; i++) {
            chance += rows[i] * columns[i];
        }
        if (chance >= 1) {
            return new Kappa(n, agreed, chance, OptionalDouble.empty(), OptionalDouble.empty());
        }
        double kappa = (agreed - chance) / (1 - chance);
        double variance = variance(table, n, rows, columns, kappa, chance);
        return new Kappa(
                n, agreed, chance, OptionalDouble.of(kappa), OptionalDouble.of(Math.sqrt(Math.max(0, variance))));
    }

    private static double variance(
            long[][] table, long n, double[] rows, double[] columns, double kappa, double chance) {
        double same = 0;
        double other = 0;
        for (int i = 0; i < table.length; i++) {
            for (int j = 0; j < table.length; j++) {
                double share = (double) table[i][j] / n;
                if (i == j) {
                    double weight = 1 - (rows[i] + columns[i]) * (1 - kappa);
                    same += share * weight * weight;
                } else {
                    double weight = rows[j] + columns[i];
                    other += share * weight * weight;
                }
            }
        }
        double left = kappa - chance * (1 - kappa);
        return (same + (1 - kappa) * (1 - kappa) * other - left * left) / (n * (1 - chance) * (1 - chance));
    }
}
