package org.benchtrail.core.diagnosis.path;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.BesideOthers;
import org.junit.jupiter.api.Test;

/**
 * Places hidden faults, half of them unlisted, with and without paths. {@code -Dbenchtrail.simulator.path-tickets=1300} and
 * {@code -Dbenchtrail.simulator.worlds=ABCDE} give the whole run.
 */
@BesideOthers
class PathSimulatorTest {
    private static final int TICKETS = Integer.getInteger("benchtrail.simulator.path-tickets", 130);
    private static final String WORLDS = System.getProperty("benchtrail.simulator.worlds", "A");
    private static final long SEED = 20260107;

    private static final Map<String, PathWorld> ALL =
            Map.of("A", PathWorld.A, "B", PathWorld.B, "C", PathWorld.C, "D", PathWorld.D, "E", PathWorld.E);

    @Test
    void paths_placeSooner_andTakeFewerMinutes() {
        WorldJson world = WorldJson.read();
        for (String name : WORLDS.split("")) {
            PathWorld w = java.util.Objects.requireNonNull(ALL.get(name));
            List<PathWorld.Hidden> tickets = w.draw(world.categories(), world.paths(), TICKETS, SEED);
            System.out.println("world " + w.name() + ", " + TICKETS + " tickets, seed " + SEED
                    + "; placed after 2, 4 and 6 tests, of all and of the unlisted; minutes (s.e.), of listed"
                    + " / unlisted");
            Map<String, PathSimulator.Summary> by = new LinkedHashMap<>();
            for (PathPolicy p : policies()) {
                by.put(p.name, PathSimulator.run(p, tickets));
                System.out.println(by.get(p.name).line());
            }
            PathSimulator.Summary flat = by.get("flat");
            PathSimulator.Summary paths = by.get("paths");
            assertTrue(paths.placed(2, false) > flat.placed(2, false) + 0.1, w.name());
            assertTrue(paths.placed(2, true) > flat.placed(2, true) + 0.2, w.name());
            assertTrue(paths.minutes() < flat.minutes(), w.name());
        }
    }

    private static List<PathPolicy> policies() {
        return List.of(PathPolicy.flat(), PathPolicy.paths());
    }

    @Test
    void structureOfTheWorld_isSound() {
        WorldJson world = WorldJson.read();
        org.junit.jupiter.api.Assertions.assertEquals(
                List.of(), PathRules.problems(world.paths().categories(), world.categories()));
        org.junit.jupiter.api.Assertions.assertEquals(
                162,
                world.categories().stream().mapToInt(c -> c.causes().size()).sum());
    }
}
