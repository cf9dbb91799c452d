package org.benchtrail.core.diagnosis.path;

import java.util.List;
import org.benchtrail.catalogue.CatalogueFile;
import org.benchtrail.catalogue.PathsFile;
import org.benchtrail.core.diagnosis.Catalogue;
import org.junit.jupiter.api.Test;

class PathSimulatorTest {
    private static final int TICKETS = Integer.getInteger("benchtrail.simulator.path-tickets", 130);

    @Test
    void worlds() {
        Catalogue catalogue = CatalogueFile.delivered();
        PathsFile f = PathsFile.read(text(), catalogue);
        System.out.println(f.faults());
        PathCatalogue paths = f.paths().orElseThrow();
        for (PathWorld w : List.of(PathWorld.A)) {
            List<PathWorld.Hidden> tickets = w.draw(catalogue.categories(), paths, TICKETS, 7);
            for (PathPolicy p : List.of(
                    PathPolicy.paths(),
                    new PathPolicy(
                            "no floor",
                            true,
                            -1,
                            true,
                            0.05,
                            PathPolicy.PLAN.withFloor(org.benchtrail.core.diagnosis.Floor.NONE)),
                    new PathPolicy("tests, no residuals", true, 0, true, 0.05, PathPolicy.PLAN),
                    new PathPolicy("residuals, no tests", true, -1, false, 0.05, PathPolicy.PLAN))) {
                long t = System.nanoTime();
                System.out.println(
                        PathSimulator.run(p, tickets).line() + " " + (System.nanoTime() - t) / 1000000 + " ms");
            }
        }
    }

    private static String text() {
        try (var in = PathSimulatorTest.class.getResourceAsStream("/diagnosis/paths.yaml")) {
            return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
