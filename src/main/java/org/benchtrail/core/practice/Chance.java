package org.benchtrail.core.practice;

import java.nio.ByteBuffer;
import java.util.Map;
import org.benchtrail.core.integrity.KeyedHash;

/**
 * The chance in a practice job, as a function of its seed and a label and not as a stream: in whichever order somebody acts, the
 * same act meets the same device.
 *
 * <p>Two uniform numbers come from the first 16 bytes of HMAC-SHA-256(seed, label), 53 bits each; the normal one is made of
 * both (Box and Muller, "A note on the generation of random normal deviates", 1958).
 */
public final class Chance {
    private static final double UNIT = 0x1.0p-53;

    private final byte[] seed;

    /** Even numbers that are no chance, by label. */
    private final Map<String, Double> decided;

    public Chance(byte[] seed) {
        this(seed, Map.of());
    }

    private Chance(byte[] seed, Map<String, Double> decided) {
        this.seed = seed.clone();
        this.decided = Map.copyOf(decided);
    }

    /** The same chance but for these labels: what is even between 0 and 1 is that number there. */
    public Chance deciding(Map<String, Double> labels) {
        return new Chance(seed, labels);
    }

    /** The seed of a job: a site's secret makes it, so that nobody guesses it from the number. */
    public static Chance ofJob(byte[] siteSecret, String family, int number) {
        return new Chance(KeyedHash.of(siteSecret, family + "|" + number));
    }

    /** The seed that a secret makes for a label: nobody who lacks the secret tells it from chance. */
    public static byte[] seed(byte[] secret, String label) {
        return KeyedHash.of(secret, label);
    }

    /** Standard normal, by label. */
    public double normal(String label) {
        ByteBuffer bytes = ByteBuffer.wrap(KeyedHash.of(seed, label));
        double first = open(bytes.getLong());
        double second = open(bytes.getLong());
        return Math.sqrt(-2 * Math.log(first)) * Math.cos(2 * Math.PI * second);
    }

    /** Evenly between 0 and 1, neither of them included. */
    public double uniform(String label) {
        Double said = decided.get(label);
        return said != null
                ? said
                : open(ByteBuffer.wrap(KeyedHash.of(seed, label)).getLong());
    }

    public double between(String label, double low, double high) {
        return low + (high - low) * uniform(label);
    }

    /** A time until something that comes at a steady rate of 1. */
    public double exponential(String label) {
        return -Math.log(uniform(label));
    }

    /** How many come of something that comes at a steady rate, where so many are expected (Poisson). */
    public int count(double mean, String label) {
        double left = uniform(label);
        double term = Math.exp(-mean);
        int count = 0;
        while (left > term && term > 0) {
            left -= term;
            count++;
            term *= mean / count;
        }
        return count;
    }

    /**
     * What an instrument shows.
     *
     * @param value the true one
     * @param point where it is measured
     * @param time the how manieth time there, from 1 on
     */
    public double reading(double value, String quantity, String point, Instrument instrument, int time) {
        double offset = normal("offset|" + quantity + "|" + instrument.name());
        double noise = normal("noise|" + quantity + "|" + point + "|" + instrument.name() + "|" + time);
        double shown = value + instrument.offset() * offset + instrument.noise() * noise;
        return Math.rint(shown / instrument.resolution()) * instrument.resolution();
    }

    /**
     * @param offset standard deviation of its fixed error, in the unit of what it measures
     * @param noise standard deviation from one reading to the next
     * @param resolution the step of its display, more than 0
     */
    public record Instrument(String name, double offset, double noise, double resolution) {}

    private static double open(long bits) {
        return ((bits >>> 11) + 0.5) * UNIT;
    }
}
