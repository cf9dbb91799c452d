package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.Report;

/**
 * How invented tickets come about. Half of them, or one in five, have a fault that nobody listed; answers follow the model's rows
 * only roughly; replacing the right segment helps less often than the model believes.
 *
 * @param unlisted share of tickets whose fault is not in the catalogue
 * @param noise standard deviation on the log-odds of every answer of a ticket
 * @param shareNoise standard deviation of the logarithm of the shares of segments
 * @param outside share of unlisted faults that are on no path
 * @param mute share of the answers on unlisted faults that say nothing
 * @param mends how often repairing the right segment helps
 */
record PathWorld(
        String name, double unlisted, double noise, double shareNoise, double outside, double mute, double mends) {
    static final PathWorld A = new PathWorld("A base: half unlisted", 0.5, 0.7, 1, 0.1, 0, 0.60);
    static final PathWorld B = new PathWorld("B rules and rows further off", 0.5, 1.5, 1, 0.1, 0, 0.60);
    static final PathWorld C = new PathWorld("C one in five unlisted", 0.2, 0.7, 1, 0.1, 0, 0.60);
    static final PathWorld D = new PathWorld("D priors of residuals exact, nothing outside", 0.5, 0.7, 0, 0, 0, 0.60);
    static final PathWorld E =
            new PathWorld("E as B, three in ten answers mute, mends .30", 0.5, 1.5, 1, 0.1, 0.3, 0.30);

    /** Leaving in what a test has cured mends so often, if the fault is there. */
    private static final double LEFT_IN = 0.95;

    /** A listed repair in the right segment mends an unlisted fault so often. */
    private static final double MENDS_BY_CHANCE = 0.25;

    /**
     * A ticket with all that chance decides, so that every policy meets the same one.
     *
     * @param cause the listed cause; empty for an unlisted fault
     * @param segment where it is; empty for outside
     */
    record Hidden(
            CauseCategory category,
            CategoryPaths paths,
            PathWorld world,
            Map<String, Boolean> equipment,
            String cause,
            String part,
            String segment,
            PlacedModel truth,
            long seed) {

        boolean isListed() {
            return !cause.isEmpty();
        }

        /** The same for every policy and order of asking. */
        private Random chance(String what) {
            return new Random(seed * 31 + what.hashCode());
        }

        /** What a test shows. */
        String answer(String test, List<String> values) {
            boolean known = truth.model().category().findings().stream().anyMatch(f -> f.id().equals(test));
            if (!known || truth.gone().contains(test)) {
                return Report.NOT_APPLICABLE;
            }
            Random r = chance(test);
            double[] row = noisy(row(test, values, r), r);
            return values.get(pick(row, r));
        }

        private double[] row(String test, List<String> values, Random r) {
            if (isListed()) {
                return row(test, values, part);
            }
            if (r.nextDouble() < world.mute() || segment.isEmpty()) {
                return mute(test, values);
            }
            boolean generic = truth.tests().stream().anyMatch(t -> t.id().equals(test)) || isRule(test);
            if (generic) {
                return row(test, values, "else:" + segment);
            }
            List<PlacedPart> here = truth.places().stream()
                    .filter(p -> p.isListed() && p.segment().equals(segment))
                    .toList();
            return here.isEmpty() || r.nextBoolean()
                    ? mute(test, values)
                    : row(test, values, here.get(r.nextInt(here.size())).part());
        }

        private boolean isRule(String finding) {
            return paths.stands().stream().anyMatch(s -> s.finding().equals(finding))
                    || paths.changes().stream().anyMatch(c -> c.finding().equals(finding))
                    || paths.paths().stream()
                            .flatMap(p -> p.points().stream())
                            .anyMatch(p -> p.same()
                                    .filter(s -> s.finding().equals(finding))
                                    .isPresent());
        }

        private double[] row(String test, List<String> values, String cause) {
            return values.stream()
                    .mapToDouble(v -> truth.model().likelihood(test, v, cause))
                    .toArray();
        }

        /** A listed finding's background; a test made from the structure finds nothing where it is done. */
        private double[] mute(String test, List<String> values) {
            for (GenericTest t : truth.tests()) {
                if (t.id().equals(test)) {
                    return t.act() == PathAct.LOG
                            ? GenericRows.logRow(t, "")
                            : GenericRows.row(GenericRules.odds(t.act()).at(GenericRules.Where.ELSE));
                }
            }
            Finding f = truth.model().category().findings().stream()
                    .filter(x -> x.id().equals(test))
                    .findFirst()
                    .orElseThrow();
            return values.stream().mapToDouble(v -> f.background().get(v)).toArray();
        }

        private double[] noisy(double[] row, Random r) {
            double[] noisy = new double[row.length];
            double sum = 0;
            for (int v = 0; v < row.length; v++) {
                noisy[v] = row[v] * Math.exp((v == 0 ? 0 : 1) * world.noise() * r.nextGaussian());
                sum += noisy[v];
            }
            for (int v = 0; v < row.length; v++) {
                noisy[v] /= sum;
            }
            return noisy;
        }

        /** Whether a repair of this cause or segment mends it. */
        boolean mended(String repair, String home, double fix, boolean cured) {
            double x = chance("repair " + repair).nextDouble();
            if (repair.startsWith("segment:")) {
                return repair.equals("segment:" + segment) && x < (cured ? LEFT_IN : world.mends());
            }
            if (isListed()) {
                return repair.equals(cause) && x < fix;
            }
            return !segment.isEmpty() && home.equals(segment) && x < MENDS_BY_CHANCE;
        }
    }

    /** The categories in turn. */
    List<Hidden> draw(List<CauseCategory> categories, PathCatalogue paths, int tickets, long seed) {
        Random r = new Random(seed);
        List<Hidden> all = new ArrayList<>();
        Map<String, PlacedModel> models = new HashMap<>();
        for (int k = 0; k < tickets; k++) {
            CauseCategory c = categories.get(k % categories.size());
            all.add(draw(c, paths.category(c.id()), models, r));
        }
        return all;
    }

    private Hidden draw(CauseCategory c, CategoryPaths paths, Map<String, PlacedModel> models, Random r) {
        Map<String, Boolean> equipment = new HashMap<>();
        Map<String, Boolean> byFinding = new HashMap<>();
        for (Segment s : paths.segments()) {
            if (s.present().start() != Presence.Start.ALWAYS) {
                boolean there = r.nextBoolean();
                String f = s.present().finding();
                equipment.put(s.id(), f.isEmpty() ? there : byFinding.computeIfAbsent(f, x -> there));
            }
        }
        Set<String> present = Equipment.of(paths, equipment, Evidence.NONE).present();
        PlacedModel m = models.computeIfAbsent(
                c.id() + present,
                x -> new PlacedModelBuilder(c, new Layout(paths, present), ModelSettings.STANDARD, List.of()).build());
        long seed = r.nextLong();
        if (r.nextDouble() >= unlisted) {
            List<PlacedPart> listed =
                    m.places().stream().filter(PlacedPart::isListed).toList();
            Map<String, Double> weights = new HashMap<>();
            c.causes().forEach(x -> weights.put(x.id(), x.weight()));
            double[] w = listed.stream()
                    .mapToDouble(p -> weights.get(p.cause()) * p.share())
                    .toArray();
            PlacedPart p = listed.get(pick(w, r));
            return new Hidden(c, paths, this, equipment, p.cause(), p.part(), p.segment(), m, seed);
        }
        if (r.nextDouble() < outside) {
            return new Hidden(c, paths, this, equipment, "", "", "", m, seed);
        }
        List<Segment> segments = m.layout().segments();
        double[] w = segments.stream()
                .mapToDouble(s -> s.share() * Math.exp(shareNoise * r.nextGaussian()))
                .toArray();
        return new Hidden(
                c, paths, this, equipment, "", "", segments.get(pick(w, r)).id(), m, seed);
    }

    static int pick(double[] w, Random r) {
        double sum = 0;
        for (double x : w) {
            sum += x;
        }
        double x = r.nextDouble() * sum;
        int i = 0;
        while (i < w.length - 1 && (x -= w[i]) >= 0) {
            i++;
        }
        return i;
    }
}
