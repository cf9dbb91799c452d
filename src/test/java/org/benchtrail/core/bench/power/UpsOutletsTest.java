package org.benchtrail.core.bench.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.SplittableRandom;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.power.OutletLoad.Kind;
import org.benchtrail.core.bench.power.OutletPlan.Place;
import org.benchtrail.core.bench.power.OutletPlan.Placed;
import org.benchtrail.core.bench.power.UpsOutlets.Feed;
import org.benchtrail.core.bench.power.UpsOutlets.Input;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class UpsOutletsTest {
    private static Input input(int battery, int surge, Feed feed, OutletLoad... loads) {
        return new Input(600, 1000, battery, surge, feed, List.of(loads));
    }

    private static Place place(Input input, String name) {
        return UpsOutlets.placed(input).stream()
                .filter(p -> p.load().name().equals(name))
                .map(Placed::place)
                .findFirst()
                .orElseThrow();
    }

    private static Result plan(Input input) {
        return UpsOutlets.calculate(input);
    }

    @Test
    void example_isPlacedByTheRules() {
        Input example = UpsOutlets.CALCULATION.example();
        assertEquals(Place.BATTERY, place(example, "Router"));
        assertEquals(Place.BATTERY, place(example, "Switch"));
        assertEquals(Place.BATTERY, place(example, "File server"));
        assertEquals(Place.SURGE_ONLY, place(example, "Front desk monitor"));
        assertEquals(Place.SURGE_ONLY, place(example, "Document scanner"));
        assertEquals(Place.WALL, place(example, "Laser printer"));
        assertEquals(Level.GOOD, plan(example).judgement().level());
        assertEquals(177, FigureOf.value(plan(example), "Load on the battery"), 1e-9);
    }

    @Test
    void mustSurvive_comesBeforeNetworkGear() {
        Input one = input(
                1,
                1,
                Feed.GROUNDED_WALL_OUTLET,
                new OutletLoad("Switch", Kind.SWITCH, 20, false),
                new OutletLoad("Desk", Kind.DESKTOP, 90, true));
        assertEquals(Place.BATTERY, place(one, "Desk"));
        assertEquals(Place.SURGE_ONLY, place(one, "Switch"));
        assertEquals(Level.CAREFUL, plan(one).judgement().level());
    }

    @Test
    void noRoomForWhatMustSurvive_isBad() {
        Input outlets = input(
                1,
                0,
                Feed.GROUNDED_WALL_OUTLET,
                new OutletLoad("A", Kind.SERVER, 20, true),
                new OutletLoad("B", Kind.SERVER, 20, true));
        assertEquals(Level.BAD, plan(outlets).judgement().level());
        assertTrue(FigureOf.rule(plan(outlets), "B").sentence().contains("no battery outlet is left"));
        Input watts = input(
                4,
                0,
                Feed.GROUNDED_WALL_OUTLET,
                new OutletLoad("A", Kind.SERVER, 400, true),
                new OutletLoad("B", Kind.SERVER, 201, true));
        assertEquals(Level.BAD, FigureOf.rule(plan(watts), "B").outcome());
        Input full = input(
                4,
                0,
                Feed.GROUNDED_WALL_OUTLET,
                new OutletLoad("A", Kind.SERVER, 400, true),
                new OutletLoad("B", Kind.SERVER, 200, true));
        assertEquals(Level.CAREFUL, plan(full).judgement().level());
        assertEquals("Headroom", full(full));
    }

    private static String full(Input input) {
        return plan(input).rules().stream()
                .filter(r -> r.outcome() == Level.CAREFUL)
                .findFirst()
                .orElseThrow()
                .name();
    }

    @Test
    void laserPrinter_neverGoesOnTheBattery_evenIfAsked() {
        Input asked = input(4, 4, Feed.GROUNDED_WALL_OUTLET, new OutletLoad("Laser", Kind.LASER_PRINTER, 400, true));
        assertEquals(Place.WALL, place(asked, "Laser"));
        assertEquals(Level.BAD, plan(asked).judgement().level());
        Input inkjet = input(4, 4, Feed.GROUNDED_WALL_OUTLET, new OutletLoad("Inkjet", Kind.INKJET_PRINTER, 30, true));
        assertEquals(Place.SURGE_ONLY, place(inkjet, "Inkjet"));
        assertEquals(Level.CAREFUL, plan(inkjet).judgement().level());
    }

    @ParameterizedTest
    @EnumSource(
            value = Feed.class,
            names = {"EXTENSION_CORD_OR_STRIP", "ANOTHER_UPS", "UNGROUNDED_OUTLET"})
    void wrongFeed_isBad(Feed feed) {
        Result result = plan(input(4, 4, feed, new OutletLoad("Router", Kind.ROUTER, 10, true)));
        assertEquals(Level.BAD, result.judgement().level());
        assertEquals(
                FigureOf.rule(result, "Feed").sentence(), result.judgement().reason());
    }

    @Test
    void everyRow_saysThatItHasNoSource() {
        plan(UpsOutlets.CALCULATION.example())
                .rules()
                .forEach(rule -> assertEquals("common practice, no source", rule.source()));
    }

    @Test
    void names_mustDiffer() {
        OutletLoad load = new OutletLoad("Router", Kind.ROUTER, 10, true);
        FigureOf.names(assertThrows(Invalid.class, () -> input(4, 4, Feed.GROUNDED_WALL_OUTLET, load, load)), "loads");
        FigureOf.names(
                assertThrows(
                        Invalid.class,
                        () -> input(4, 4, Feed.GROUNDED_WALL_OUTLET, new OutletLoad(" ", Kind.ROUTER, -1, true))),
                "loads[0].watts");
    }

    /** Every load once, never more on a side than it has outlets or watts, nothing on the battery that must not be there. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void plans_keepTheirLimits(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int row = 0; row < 200; row++) {
            Input input = anyInput(random);
            List<Placed> plan = UpsOutlets.placed(input);
            String where = "seed " + seed + ", row " + row;
            assertEquals(
                    new HashSet<>(input.loads()),
                    new HashSet<>(plan.stream().map(Placed::load).toList()),
                    where);
            assertEquals(input.loads().size(), plan.size(), where);
            List<OutletLoad> battery = plan.stream()
                    .filter(p -> p.place() == Place.BATTERY)
                    .map(Placed::load)
                    .toList();
            assertTrue(battery.size() <= input.batteryOutlets(), where);
            assertTrue(battery.stream().mapToDouble(OutletLoad::watts).sum() <= input.ratedWatts(), where);
            assertTrue(battery.stream().noneMatch(l -> l.kind().keepOffBattery()), where);
            assertTrue(plan.stream().filter(p -> p.place() == Place.SURGE_ONLY).count() <= input.surgeOutlets(), where);
            assertTrue(
                    plan.stream()
                            .filter(p -> p.load().mustSurvive() && p.place() != Place.BATTERY)
                            .allMatch(p -> p.level() != Level.GOOD),
                    where);
        }
    }

    private static Input anyInput(SplittableRandom random) {
        List<OutletLoad> loads = new ArrayList<>();
        int count = random.nextInt(1, 12);
        for (int i = 0; i < count; i++) {
            Kind kind = Kind.values()[random.nextInt(Kind.values().length)];
            loads.add(new OutletLoad("load " + i, kind, random.nextInt(0, 400), random.nextBoolean()));
        }
        return new Input(600, 1000, random.nextInt(0, 6), random.nextInt(0, 6), Feed.GROUNDED_WALL_OUTLET, loads);
    }
}
