package org.benchtrail.core.diagnosis;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Categories and evidence made up for tests. */
final class Invented {
    static final Instant T0 = Instant.parse("2026-01-05T08:00:00Z");
    static final List<String> YES_NO = List.of("no", "yes");

    private Invented() {}

    static Finding answer(String id, double background, double minutes) {
        return new Finding(
                id,
                id + "?",
                Finding.Kind.ANSWER,
                YES_NO,
                StarterJson.binary(YES_NO, background),
                minutes,
                Risk.NONE,
                List.of(),
                null,
                null);
    }

    static Finding applies(Finding f, Condition... conditions) {
        return new Finding(
                f.id(),
                f.question(),
                f.kind(),
                f.values(),
                f.background(),
                f.minutes(),
                f.risk(),
                List.of(conditions),
                f.group(),
                f.limits());
    }

    static Finding grouped(Finding f, String group) {
        return new Finding(
                f.id(),
                f.question(),
                f.kind(),
                f.values(),
                f.background(),
                f.minutes(),
                f.risk(),
                f.applies(),
                group,
                f.limits());
    }

    static Finding timed(Finding f, double minutes) {
        return new Finding(
                f.id(),
                f.question(),
                f.kind(),
                f.values(),
                f.background(),
                minutes,
                f.risk(),
                f.applies(),
                f.group(),
                f.limits());
    }

    static Deviation yes(String finding, double p) {
        return new Deviation(finding, StarterJson.binary(YES_NO, p));
    }

    static Repair repair(double minutes, double fix) {
        return new Repair("repair", minutes, 0.5, fix, 0, Risk.NONE, true, List.of());
    }

    static Cause cause(String id, double weight, Repair repair, Deviation... deviations) {
        return new Cause(id, "cause " + id, weight, List.of(deviations), "look at it", 5, repair, "none");
    }

    static CauseCategory category(double escalate, List<Finding> findings, List<Cause> causes) {
        return new CauseCategory("invented", "Invented", escalate, List.of(), findings, causes, List.of());
    }

    static Report report(String finding, String value, double reliability, int minute) {
        return new Report("r" + minute, finding, value, reliability, T0.plusSeconds(60L * minute), false);
    }

    /** Random category: binary findings, or with three values when {@code mixed}; 2-5 deviators on each finding. */
    static CauseCategory random(long seed, int causes, int findings, boolean mixed) {
        Random r = new Random(seed);
        List<Finding> fs = new ArrayList<>();
        for (int f = 0; f < findings; f++) {
            boolean three = mixed && r.nextInt(3) == 0;
            List<String> values = three ? List.of("inside", "below", "above") : YES_NO;
            fs.add(new Finding(
                    "f" + f,
                    "f" + f + "?",
                    three ? Finding.Kind.READING : Finding.Kind.ANSWER,
                    values,
                    distribution(r, values, 0.02 + 0.3 * r.nextDouble()),
                    1 + r.nextInt(20),
                    Risk.NONE,
                    List.of(),
                    r.nextInt(4) == 0 ? "g" : null,
                    null));
        }
        List<Cause> cs = new ArrayList<>();
        for (int i = 0; i < causes; i++) {
            cs.add(cause(r, i, fs));
        }
        return new CauseCategory(
                "random",
                "Random " + seed,
                120 + r.nextInt(200),
                List.of(new Group("g", r.nextDouble())),
                fs,
                cs,
                List.of());
    }

    private static Cause cause(Random r, int i, List<Finding> findings) {
        Map<String, Deviation> ds = new LinkedHashMap<>();
        int k = Math.min(findings.size(), 3 + r.nextInt(10));
        while (ds.size() < k) {
            Finding f = findings.get(r.nextInt(findings.size()));
            double p = r.nextInt(4) == 0 ? 0.02 + 0.1 * r.nextDouble() : 0.5 + 0.48 * r.nextDouble();
            ds.put(f.id(), new Deviation(f.id(), distribution(r, f.values(), p)));
        }
        Repair repair =
                new Repair("repair", 3 + r.nextInt(80), 5, 0.9 + 0.09 * r.nextDouble(), 0, Risk.NONE, true, List.of());
        return new Cause(
                String.format(java.util.Locale.ROOT, "C%03d", i),
                "cause " + i,
                0.2 + 5 * r.nextDouble(),
                List.copyOf(ds.values()),
                "look",
                5,
                repair,
                "none");
    }

    private static Map<String, Double> distribution(Random r, List<String> values, double abnormal) {
        if (values.size() == 2) {
            return StarterJson.binary(values, abnormal);
        }
        double below = abnormal * (0.1 + 0.8 * r.nextDouble());
        return Map.of(values.get(0), 1 - abnormal, values.get(1), below, values.get(2), abnormal - below);
    }

    /** Random reports on some of the findings, sometimes two on one; at times a failed repair. */
    static Evidence evidence(long seed, CauseCategory c, int most) {
        Random r = new Random(seed * 31 + 7);
        List<Report> reports = new ArrayList<>();
        int k = r.nextInt(most + 1);
        double[] rhos = {0.98, 0.95, 0.85, 0.8, 0.6};
        for (int n = 0; n < k; n++) {
            Finding f = c.findings().get(r.nextInt(c.findings().size()));
            String value = f.values().get(r.nextInt(f.values().size()));
            reports.add(report(f.id(), value, rhos[r.nextInt(rhos.length)], n));
        }
        List<FailedRepair> failed = new ArrayList<>();
        if (r.nextInt(3) == 0) {
            Cause x = c.causes().get(r.nextInt(c.causes().size()));
            failed.add(new FailedRepair(x.id(), 0.4, T0.plusSeconds(3600)));
        }
        return new Evidence(reports, failed);
    }
}
