package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;

/**
 * What makes paths acceptable beside the catalogue they go with. Collects every problem: a file is taken whole or not at all.
 */
public final class PathRules {
    static final double LEAST_RESIDUAL = 0.05;
    static final double MOST_RESIDUAL = 0.60;
    private static final double LEAST_MINUTES = 0.5;
    private static final double MOST_MINUTES = 10_000;
    private static final double MOST_FIX = 0.99;
    private static final double SUM_TOLERANCE = 1e-9;

    private final List<Invalid.Problem> problems = new ArrayList<>();

    private PathRules() {}

    /** Every problem of these paths, in the order of the entries; empty if there is none. */
    public static List<Invalid.Problem> problems(List<CategoryPaths> all, List<CauseCategory> catalogue) {
        PathRules rules = new PathRules();
        Map<String, CauseCategory> categories = new HashMap<>();
        catalogue.forEach(c -> categories.put(c.id(), c));
        Set<String> seen = new HashSet<>();
        for (int k = 0; k < all.size(); k++) {
            CategoryPaths paths = all.get(k);
            String at = "categories[" + k + "]";
            CauseCategory category = categories.get(paths.category());
            rules.require(
                    category != null, at + ".id", "name a category of the catalogue, not '" + paths.category() + "'");
            rules.require(seen.add(paths.category()), at + ".id", "name each category once");
            if (category != null) {
                new OneCategory(rules, paths, category, at).check();
            }
        }
        return List.copyOf(rules.problems);
    }

    private void require(boolean holds, String field, String sentence) {
        if (!holds) {
            problems.add(new Invalid.Problem(field, sentence));
        }
    }

    private void minutes(double x, String at) {
        require(
                x >= LEAST_MINUTES && x <= MOST_MINUTES,
                at,
                "give minutes from " + LEAST_MINUTES + " to " + (int) MOST_MINUTES);
    }

    /** The paths of one category beside it. */
    private static final class OneCategory {
        private final PathRules rules;
        private final CategoryPaths paths;
        private final String at;
        private final Set<String> segments = new HashSet<>();
        private final Map<String, Finding> findings = new HashMap<>();
        private final Set<String> causes = new HashSet<>();

        OneCategory(PathRules rules, CategoryPaths paths, CauseCategory category, String at) {
            this.rules = rules;
            this.paths = paths;
            this.at = at;
            paths.segments().forEach(s -> segments.add(s.id()));
            category.findings().forEach(f -> findings.put(f.id(), f));
            category.causes().stream().map(Cause::id).forEach(causes::add);
        }

        void check() {
            double r = paths.residual();
            rules.require(
                    r >= LEAST_RESIDUAL && r <= MOST_RESIDUAL,
                    at + ".residual",
                    "give a share from " + LEAST_RESIDUAL + " to " + MOST_RESIDUAL);
            Set<String> seen = new HashSet<>();
            for (int k = 0; k < paths.segments().size(); k++) {
                Segment s = paths.segments().get(k);
                rules.require(
                        seen.add(s.id()), at + ".segments[" + k + "].id", "name each segment once: '" + s.id() + "'");
                segment(s, at + ".segments[" + k + "]");
            }
            homes();
            spread();
            requires();
            for (int k = 0; k < paths.paths().size(); k++) {
                path(paths.paths().get(k), at + ".paths[" + k + "]");
            }
            int n = paths.paths().size();
            rules.require(n >= 1 && n <= 3, at + ".paths", "give one to three paths");
            whole();
            others();
        }

        private void notes() {
            Layout all = new Layout(paths, segments);
            Set<String> tests = GenericTests.of(all, List.copyOf(segments)).stream()
                    .map(GenericTest::id)
                    .collect(Collectors.toSet());
            paths.notes().forEach((test, note) -> {
                String here = at + ".tests." + test;
                rules.require(tests.contains(test), here, "name a test that the structure makes");
                note.unless().forEach(c -> {
                    finding(c.finding(), here + ".unless");
                    c.values().forEach(v -> value(c.finding(), v, here + ".unless"));
                });
            });
        }

        private void known(List<String> ids, String here) {
            for (String id : ids) {
                rules.require(
                        segments.contains(id), here, "name a segment of this category: '" + id + "' is not listed");
            }
        }

        private void finding(String id, String here) {
            rules.require(findings.containsKey(id), here, "name a finding of the category: '" + id + "' is not listed");
        }

        private void value(String finding, String value, String here) {
            Finding f = findings.get(finding);
            rules.require(
                    f == null || f.values().contains(value),
                    here,
                    "name a value that '" + finding + "' has, not '" + value + "'");
        }

        private void segment(Segment s, String here) {
            rules.require(
                    s.name().length() >= 2 && s.name().length() <= 70,
                    here + ".name",
                    "give a name of 2 to 70 characters");
            rules.require(s.share() > 0 && Double.isFinite(s.share()), here + ".share", "give a share above 0");
            rules.require(
                    paths.paths().stream().anyMatch(p -> p.order().contains(s.id())),
                    here + ".id",
                    "put segment '" + s.id() + "' on a path");
            presence(s.present(), here + ".present");
            rules.require(
                    s.causes().containsAll(s.seating()),
                    here + ".seating",
                    "name causes that are at home in '" + s.id() + "'");
            rules.require(
                    s.causes().containsAll(s.survives()),
                    here + ".survives",
                    "name causes that are at home in '" + s.id() + "'");
            Set<PathAct> acts = new HashSet<>();
            for (SegmentAct a : s.acts()) {
                String there = here + ".acts." + a.act().word();
                rules.require(
                        acts.add(a.act()) && PathAct.OF_A_SEGMENT.contains(a.act()),
                        there,
                        "give each act of a segment once");
                act(s, a, there);
            }
            repair(s.repair(), here + ".repair");
        }

        private void presence(Presence p, String here) {
            rules.require(
                    p.start() == Presence.Start.ALWAYS
                            || !p.ask().isEmpty()
                            || !p.finding().isEmpty(),
                    here,
                    "give the question, or the finding, that settles whether it is there");
            rules.require(
                    p.finding().isEmpty() == p.is().isEmpty(), here, "give a finding with the values that mean there");
            if (!p.finding().isEmpty()) {
                finding(p.finding(), here + ".finding");
                p.is().stream().sorted().forEach(v -> value(p.finding(), v, here + ".is"));
            }
        }

        private void act(Segment s, SegmentAct a, String here) {
            rules.minutes(a.minutes(), here + ".minutes");
            rules.require(
                    a.risk().compareTo(Risk.LOW) <= 0 || !a.cautions().isEmpty(),
                    here + ".cautions",
                    "say what to mind: its risk is " + a.risk());
            rules.require(
                    a.risk() != Risk.HIGH || !a.needs().isEmpty(),
                    here + ".needs",
                    "say what must be so before: its risk is high");
            rules.require(
                    a.act() != PathAct.SUBSTITUTE || !a.with().isEmpty(),
                    here + ".with",
                    "say what one must have to substitute it");
            rules.require(
                    !s.inside() || (a.risk() != Risk.NONE && a.cautions().containsAll(List.of("MAINS", "STATIC"))),
                    here + ".cautions",
                    "what is done inside has a risk, and MAINS and STATIC among its cautions");
        }

        private void repair(Repair r, String here) {
            rules.minutes(r.minutes(), here + ".minutes");
            rules.minutes(r.verifyMinutes(), here + ".verifyMinutes");
            rules.require(
                    r.fixProbability() > 0 && r.fixProbability() <= MOST_FIX,
                    here + ".fixProbability",
                    "give a probability above 0, at most " + MOST_FIX);
        }

        /** Every cause of the catalogue has exactly one home. */
        private void homes() {
            Map<String, Integer> homes = new HashMap<>();
            for (int k = 0; k < paths.segments().size(); k++) {
                for (String c : paths.segments().get(k).causes()) {
                    String here = at + ".segments[" + k + "].causes";
                    rules.require(causes.contains(c), here, "name a cause of the category: '" + c + "' is not listed");
                    rules.require(homes.merge(c, 1, Integer::sum) == 1, here, "give '" + c + "' one home");
                }
            }
            causes.stream()
                    .filter(c -> !homes.containsKey(c))
                    .sorted()
                    .forEach(c -> rules.require(false, at + ".segments", "give '" + c + "' a home in a segment"));
        }

        private void spread() {
            paths.spread().entrySet().stream()
                    .sorted(Map.Entry.comparingByKey())
                    .forEach(e -> {
                        String here = at + ".spread." + e.getKey();
                        known(List.copyOf(e.getValue().keySet()), here);
                        double sum = e.getValue().values().stream()
                                .mapToDouble(x -> x)
                                .sum();
                        rules.require(
                                e.getValue().values().stream().allMatch(x -> x > 0)
                                        && Math.abs(sum - 1) <= SUM_TOLERANCE,
                                here,
                                "give parts above 0 that sum to 1");
                        boolean home = paths.home(e.getKey())
                                .map(s -> e.getValue().containsKey(s.id()))
                                .orElse(false);
                        rules.require(home, here, "name the segment where the cause is at home among the parts");
                    });
        }

        private void requires() {
            paths.requires().entrySet().stream()
                    .sorted(Map.Entry.comparingByKey())
                    .forEach(e -> {
                        String here = at + ".requires." + e.getKey();
                        known(List.of(e.getValue()), here);
                        rules.require(
                                causes.contains(e.getKey()) || findings.containsKey(e.getKey()),
                                here,
                                "name a cause or a finding of the category");
                        boolean home = paths.home(e.getKey())
                                .map(s -> s.id().equals(e.getValue()))
                                .orElse(false);
                        rules.require(!home, here, "leave it out: the cause is at home there");
                    });
        }

        private void path(FaultPath path, String here) {
            int n = path.order().size();
            rules.require(n >= 4 && n <= 8, here + ".order", "give four to eight segments");
            rules.require(new HashSet<>(path.order()).size() == n, here + ".order", "name no segment twice");
            known(path.order(), here + ".order");
            int last = -1;
            for (int k = 0; k < path.points().size(); k++) {
                Point p = path.points().get(k);
                String there = here + ".points[" + k + "]";
                int place = path.order().indexOf(p.after());
                rules.require(
                        place >= 0 && place < n - 1, there + ".after", "name a segment of the path, not the last");
                rules.require(place > last, there + ".after", "list the points in the order of the path");
                last = Math.max(last, place);
                rules.minutes(p.minutes(), there + ".minutes");
                p.same().ifPresent(s -> {
                    finding(s.finding(), there + ".same");
                    if (!s.bad().equals(Point.ABNORMAL)) {
                        value(s.finding(), s.bad(), there + ".same");
                    }
                });
            }
        }

        private void whole() {
            for (int k = 0; k < paths.whole().size(); k++) {
                WholeTest w = paths.whole().get(k);
                String here = at + ".whole[" + k + "]";
                int n = w.segments().size();
                rules.require(
                        PathAct.OF_THE_WHOLE.contains(w.act()),
                        here + ".act",
                        "choose sister, minimal, repeat, log or undo");
                rules.require(w.act() == PathAct.UNDO || n > 0, here, "name the segments it tells of");
                rules.require(
                        w.act() != PathAct.LOG || (n >= 2 && n <= 8), here + ".names", "name two to eight segments");
                known(w.segments(), here);
                rules.minutes(w.minutes(), here + ".minutes");
                if (!w.same().isEmpty()) {
                    finding(w.same(), here + ".same");
                }
            }
        }

        private void others() {
            for (Change c : paths.changes()) {
                String here = at + ".changes." + c.kind();
                finding(c.finding(), here + ".finding");
                known(c.touches(), here + ".touches");
            }
            known(List.copyOf(paths.words().keySet()), at + ".words");
            notes();
            Set<String> points = new HashSet<>();
            paths.paths().forEach(p -> p.points().forEach(q -> q.same().ifPresent(s -> points.add(s.finding()))));
            for (StandsFor s : paths.stands()) {
                String here = at + ".stands." + s.finding();
                finding(s.finding(), here);
                known(s.segments(), here + ".segments");
                rules.require(!s.segments().isEmpty(), here + ".segments", "name the segments it is done to");
                value(s.finding(), s.positive(), here + ".positive");
                rules.require(!points.contains(s.finding()), here, "leave it out: the finding is a point's already");
                rules.require(
                        !Set.of(PathAct.POINT, PathAct.LOG, PathAct.UNDO).contains(s.act()),
                        here + ".act",
                        "choose an act done to segments");
            }
        }
    }

    /** Neighbours that nothing parts: no point between them, and no act on either. Not an error. */
    public static List<String> warnings(CategoryPaths paths) {
        List<String> warnings = new ArrayList<>();
        for (FaultPath path : paths.paths()) {
            for (int k = 1; k < path.order().size(); k++) {
                String a = path.order().get(k - 1);
                String b = path.order().get(k);
                boolean point = path.points().stream().anyMatch(p -> p.after().equals(a));
                boolean act = List.of(a, b).stream()
                        .flatMap(id -> paths.segment(id).stream())
                        .anyMatch(s -> s.acts().stream().anyMatch(x -> x.act() != PathAct.LOOK));
                if (!point && !act) {
                    warnings.add(paths.category() + ": nothing parts '" + a + "' and '" + b + "'");
                }
            }
        }
        return warnings;
    }
}
