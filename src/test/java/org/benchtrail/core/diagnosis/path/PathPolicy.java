package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.BenchSituation;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.Needs;
import org.benchtrail.core.diagnosis.PlanSettings;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Source;

/** Ways of working: with what, out of the structure, beliefs and tests are made. */
final class PathPolicy {
    static final PlanSettings PLAN =
            PlanSettings.STANDARD.withoutRiskMinutes().withPlannedReliability(Source.SEEN.reliability());

    final String name;
    private final boolean structure;
    private final double residual;
    private final boolean tests;
    private final double unlisted;
    private final PlanSettings plan;
    private final Map<String, Localiser> localisers = new HashMap<>();

    /**
     * @param structure whether it is asked what is there
     * @param residual share for what nobody listed; negative for that of the file
     * @param tests whether tests are made from the structure
     */
    PathPolicy(String name, boolean structure, double residual, boolean tests, double unlisted, PlanSettings plan) {
        this.name = name;
        this.structure = structure;
        this.residual = residual;
        this.tests = tests;
        this.unlisted = unlisted;
        this.plan = plan;
    }

    static PathPolicy flat() {
        return new PathPolicy("flat", false, 0, false, 0.05, PLAN);
    }

    static PathPolicy paths() {
        return new PathPolicy("paths", true, -1, true, 0.05, PLAN);
    }

    boolean asksEquipment() {
        return structure;
    }

    Localiser localiser(CauseCategory category, CategoryPaths paths) {
        return localisers.computeIfAbsent(
                category.id(),
                id -> new Localiser(category, changed(paths), ModelSettings.STANDARD.withUnlisted(unlisted), plan));
    }

    private CategoryPaths changed(CategoryPaths p) {
        List<Segment> segments = p.segments().stream()
                .map(s -> new Segment(
                        s.id(),
                        s.name(),
                        structure ? s.present() : Presence.ALWAYS,
                        s.share(),
                        s.causes(),
                        s.seating(),
                        s.survives(),
                        s.inside(),
                        tests ? s.acts() : List.of(),
                        s.repair()))
                .toList();
        List<FaultPath> ways = p.paths().stream()
                .map(w -> tests
                        ? w
                        : new FaultPath(
                                w.id(),
                                w.title(),
                                w.order(),
                                w.points().stream()
                                        .filter(x -> x.same().isPresent())
                                        .toList()))
                .toList();
        return new CategoryPaths(
                p.category(),
                residual < 0 ? p.residual() : residual,
                segments,
                p.spread(),
                structure ? p.requires() : Map.of(),
                ways,
                tests ? p.whole() : List.of(),
                p.changes(),
                p.stands());
    }

    /** Whatever is needed is met, and the case is open: gates and needs are not what is compared. */
    static Known known(PathWorld.Hidden ticket, boolean asked) {
        Set<String> met = new HashSet<>(List.of(Needs.BACKUP_DONE, "change-noted"));
        List<Repair> repairs = new ArrayList<>();
        ticket.category().causes().stream().map(Cause::repair).forEach(repairs::add);
        ticket.paths().segments().forEach(s -> {
            repairs.add(s.repair());
            s.acts().forEach(a -> met.addAll(a.needs()));
        });
        ticket.paths().whole().forEach(w -> met.addAll(w.needs()));
        repairs.forEach(r -> met.addAll(r.needs()));
        Set<String> confirmed = new HashSet<>();
        ticket.category().causes().forEach(c -> confirmed.add(c.id()));
        ticket.paths().segments().forEach(s -> confirmed.add("else:" + s.id()));
        BenchSituation all = new BenchSituation(met, confirmed, Set.of(), Map.of());
        return Known.of(org.benchtrail.core.diagnosis.Evidence.NONE)
                .with(all)
                .withOpened(true)
                .withEquipment(asked ? ticket.equipment() : Map.of());
    }
}
