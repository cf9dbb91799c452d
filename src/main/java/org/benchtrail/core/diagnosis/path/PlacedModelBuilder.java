package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.CausePart;
import org.benchtrail.core.diagnosis.Cure;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Group;
import org.benchtrail.core.diagnosis.LikelihoodTable;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.SharedRepair;
import org.benchtrail.core.diagnosis.Structure;

/** Makes the model of a category whose causes sit in places. Done once for a version and a set of segments. */
final class PlacedModelBuilder {
    /** Acts on one segment tell partly the same. Our choice. */
    private static final double ACTS_CORRELATION = 0.5;

    private final CauseCategory category;
    private final Layout layout;
    private final ModelSettings settings;
    private final List<Cause> left;
    private final List<PlacedPart> places;
    private final List<GenericTest> tests;
    private final double residual;
    /** Prior of each listed cause among the listed ones. */
    private final double[] share;

    private final double[] priors;
    private final double unlisted;

    PlacedModelBuilder(CauseCategory category, Layout layout, ModelSettings settings, List<String> touched) {
        this.category = category;
        this.layout = layout;
        this.settings = settings;
        left = Places.left(layout, category);
        places = Places.of(layout, left);
        tests = GenericTests.of(layout, touched);
        residual = layout.segments().isEmpty() ? 0 : layout.paths().residual();
        double weights = left.stream().mapToDouble(Cause::weight).sum();
        share = left.stream().mapToDouble(c -> c.weight() / weights).toArray();
        double rest = left.isEmpty() ? settings.unlisted() + residual : 1;
        unlisted = settings.unlisted() / rest;
        priors = priors(rest);
    }

    private double[] priors(double rest) {
        Map<String, Double> listed = new HashMap<>();
        for (int i = 0; i < share.length; i++) {
            listed.put(left.get(i).id(), (1 - settings.unlisted() - residual) * share[i]);
        }
        double shares = layout.segments().stream().mapToDouble(Segment::share).sum();
        Map<String, Double> here = layout.segments().stream()
                .collect(Collectors.toMap(Segment::id, s -> residual * s.share() / shares / rest));
        return places.stream()
                .mapToDouble(p -> p.isListed()
                        ? listed.getOrDefault(p.cause(), 0.0) * p.share()
                        : here.getOrDefault(p.segment(), 0.0))
                .toArray();
    }

    PlacedModel build() {
        ListedRows rows = new ListedRows(layout, places, priors);
        List<LikelihoodTable> tables = new ArrayList<>();
        for (Finding f : category.findings()) {
            tables.add(rows.table(f, LikelihoodTable.of(f, left, share, settings), left));
        }
        GenericRows generic = new GenericRows(places, priors, settings);
        tests.forEach(t -> tables.add(generic.table(t)));
        List<CausePart> parts = new ArrayList<>();
        for (int p = 0; p < places.size(); p++) {
            parts.add(new CausePart(places.get(p).part(), places.get(p).cause(), priors[p]));
        }
        Structure structure = new Structure(left.size(), parts, unlisted, tables, cures(), confirming());
        Model model = Model.of(withPlaces(), settings, structure);
        return new PlacedModel(
                model, layout, places, tests, gone(), Subjects.of(model.category(), layout, tests), segmentOf());
    }

    private List<Integer> segmentOf() {
        List<String> ids = layout.segments().stream().map(Segment::id).toList();
        return places.stream()
                .map(p -> ids.contains(p.segment()) ? ids.indexOf(p.segment()) : ids.size())
                .toList();
    }

    private CauseCategory withPlaces() {
        Map<String, String> group = new HashMap<>();
        Set<String> groups = new LinkedHashSet<>();
        tests.forEach(t -> group.put(t.id(), group(t.act(), t.segments())));
        layout.paths().stands().forEach(s -> group.put(s.finding(), group(s.act(), s.segments())));
        List<Finding> findings = new ArrayList<>();
        for (Finding f : category.findings()) {
            String of = group.getOrDefault(f.id(), "");
            findings.add(f.group() != null || of.isEmpty() ? f : f.withGroup(of));
        }
        tests.forEach(t -> findings.add(t.finding(group.getOrDefault(t.id(), ""))));
        findings.stream().map(Finding::group).forEach(g -> {
            if (g != null) {
                groups.add(g);
            }
        });
        List<Group> all = new ArrayList<>(category.groups());
        groups.removeAll(category.groups().stream().map(Group::id).toList());
        groups.forEach(g -> all.add(new Group(g, ACTS_CORRELATION)));
        return new CauseCategory(
                category.id(),
                category.title(),
                category.escalateMinutes(),
                all,
                findings,
                causes(),
                repairs(),
                category.hints());
    }

    /** The group of acts on one segment; empty for other acts and for more than one segment. */
    private static String group(PathAct act, List<String> segments) {
        return PathAct.TOUCHING.contains(act) && segments.size() == 1 ? "acts:" + segments.get(0) : "";
    }

    private List<Cause> causes() {
        List<Cause> all = new ArrayList<>(left);
        for (PlacedPart p : places) {
            if (!p.isListed()) {
                Segment s = layout.paths().segment(p.segment()).orElseThrow();
                all.add(Places.somethingElse(s, s.share()));
            }
        }
        return all;
    }

    /** The catalogue's, as far as their causes are left, and one for each segment. */
    private List<SharedRepair> repairs() {
        Set<String> here = left.stream().map(Cause::id).collect(Collectors.toSet());
        List<SharedRepair> all = new ArrayList<>();
        for (SharedRepair s : category.sharedRepairs()) {
            Map<String, Double> fixes = new TreeMap<>(s.fixes());
            fixes.keySet().retainAll(here);
            if (!fixes.isEmpty()) {
                all.add(new SharedRepair(s.id(), s.repair(), fixes));
            }
        }
        if (residual > 0) {
            for (Segment s : layout.segments()) {
                Map<String, Double> fixes = new TreeMap<>();
                mended(List.of(s.id()))
                        .forEach(p -> fixes.put(p.part(), s.repair().fixProbability()));
                all.add(new SharedRepair(Places.repair(s.id()), s.repair(), fixes));
            }
        }
        return all;
    }

    /** The parts in these segments that a good spare, or leaving out what is bad, would mend. */
    private List<PlacedPart> mended(List<String> segments) {
        return places.stream()
                .filter(p -> segments.contains(p.segment()) && !p.survives())
                .toList();
    }

    private List<Cure> cures() {
        List<Cure> cures = new ArrayList<>();
        for (GenericTest t : tests) {
            if (PathAct.CURES.contains(t.act())) {
                cures.add(cure(t.id(), "yes", t.segments()));
            }
        }
        Set<String> known = category.findings().stream().map(Finding::id).collect(Collectors.toSet());
        for (StandsFor s : layout.paths().stands()) {
            List<String> in = layout.left(s.segments());
            if (residual > 0 && s.act() == PathAct.SUBSTITUTE && !in.isEmpty() && known.contains(s.finding())) {
                cures.add(cure(s.finding(), s.positive(), in));
            }
        }
        return cures;
    }

    private Cure cure(String finding, String value, List<String> segments) {
        Set<String> causes = mended(segments).stream().map(PlacedPart::cause).collect(Collectors.toSet());
        return new Cure(finding, value, causes);
    }

    /** A cause is confirmed by the tests of its segments. */
    private Map<String, List<String>> confirming() {
        Map<String, List<String>> confirming = new HashMap<>();
        for (PlacedPart p : places) {
            for (GenericTest t : tests) {
                if (PathAct.OF_A_SEGMENT.contains(t.act()) && t.segments().equals(List.of(p.segment()))) {
                    confirming
                            .computeIfAbsent(p.cause(), c -> new ArrayList<>())
                            .add(t.id());
                }
            }
        }
        return confirming;
    }

    /** Listed findings that are tied to absent segments alone, require one, or have no cause left that deviates. */
    private Set<String> gone() {
        Set<String> gone = new HashSet<>();
        Map<String, Set<String>> tied = tied();
        Set<String> deviating = new HashSet<>();
        left.forEach(c -> c.deviations().forEach(d -> deviating.add(d.finding())));
        Set<String> ever = new HashSet<>();
        category.causes().forEach(c -> c.deviations().forEach(d -> ever.add(d.finding())));
        for (Finding f : category.findings()) {
            String required = layout.paths().requires().get(f.id());
            boolean absent = required != null && !layout.has(required);
            boolean away = tied.containsKey(f.id()) && tied.get(f.id()).stream().noneMatch(layout::has);
            boolean tellsNothing = ever.contains(f.id()) && !deviating.contains(f.id());
            if (absent || away || tellsNothing) {
                gone.add(f.id());
            }
        }
        return gone;
    }

    private Map<String, Set<String>> tied() {
        Map<String, Set<String>> tied = new HashMap<>();
        layout.paths()
                .stands()
                .forEach(s ->
                        tied.computeIfAbsent(s.finding(), f -> new HashSet<>()).addAll(s.segments()));
        for (FaultPath path : layout.paths().paths()) {
            for (Point p : path.points()) {
                p.same()
                        .ifPresent(s -> tied.computeIfAbsent(s.finding(), f -> new HashSet<>())
                                .add(p.after()));
            }
        }
        return tied;
    }
}
