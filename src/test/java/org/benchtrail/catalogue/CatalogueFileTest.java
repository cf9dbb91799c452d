package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.benchtrail.core.advice.ExpectedReading;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.junit.jupiter.api.Test;

class CatalogueFileTest {
    private static String resource(String name) throws IOException {
        try (InputStream in = CatalogueFileTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static final String GOOD = """
        format: 1
        categories:
          - id: lamp
            title: Lamp
            escalateMinutes: 60
            groups: [{id: light, correlation: 0.5}]
            findings:
              - id: dark
                question: does it stay dark
                kind: answer
                values: [no, yes]
                background: 0.2
                minutes: 1
                group: light
              - id: volts
                question: voltage at the socket
                kind: reading
                values: [inside, below, above]
                background: {inside: 0.9, below: 0.07, above: 0.03}
                minutes: 3
                applies: [{finding: dark, is: [yes]}]
                limits: {unit: V, low: 207, high: 253}
            causes:
              - id: bulb
                name: bulb
                weight: 3
                deviations: {dark: 0.95}
                confirm: swap it
                confirmMinutes: 2
                repair: {text: new bulb, minutes: 2, partCost: 4, needs: [switched-off]}
              - id: socket
                name: socket
                weight: 1
                deviations: {dark: 0.9, volts: {inside: 0.3, below: 0.6, above: 0.1}}
                confirm: measure
                confirmMinutes: 3
                repair: {text: report it, minutes: 5, risk: high, reversible: false}
            sharedRepairs:
              - {id: both, text: new lamp, minutes: 10, fixes: {bulb: 0.9, socket: 0.5}}
        """;

    private static List<String> faults(String yaml) {
        return CatalogueFile.read(yaml).faults().stream()
                .map(f -> f.row() + " " + f.field() + ": " + f.reason())
                .toList();
    }

    @Test
    void goodFile_isReadInFull() {
        CatalogueFile file = CatalogueFile.read(GOOD);
        assertEquals(List.of(), file.faults());
        CauseCategory lamp = file.catalogue().orElseThrow().category("lamp").orElseThrow();
        assertEquals(List.of("no", "yes"), lamp.findings().get(0).values());
        assertEquals(0.8, lamp.findings().get(0).background().get("no"), 1e-12);
        assertEquals("light", lamp.findings().get(0).group());
        assertEquals(
                0.6, lamp.causes().get(1).deviations().get(1).probabilities().get("below"), 1e-12);
        assertEquals(List.of("switched-off"), lamp.causes().get(0).repair().needs());
        assertEquals(4, lamp.causes().get(0).repair().partCost());
        assertEquals(0.5, lamp.sharedRepairs().get(0).fixes().get("socket"), 1e-12);
    }

    @Test
    void everyMistake_isToldWithItsRow() {
        String bad = GOOD.replace("weight: 3", "weight: -3")
                .replace("minutes: 1\n", "minutes: soon\n")
                .replace("deviations: {dark: 0.95}", "deviations: {drak: 0.95}")
                .replace("risk: high", "risk: terrible")
                .replace("above: 0.03}", "above: 0.04}")
                .replace("title: Lamp", "titel: Lamp")
                .replace("low: 207", "low: 270");
        List<CatalogueFile.Fault> faults = CatalogueFile.read(bad).faults();
        assertTrue(CatalogueFile.read(bad).catalogue().isEmpty());
        assertEquals(
                List.of(3, 4, 13, 19, 22, 26, 27, 37),
                faults.stream().map(CatalogueFile.Fault::row).toList(),
                faults(bad).toString());
    }

    @Test
    void rulesProblem_pointsToTheRowOfTheEntry() {
        assertEquals(
                List.of("15 categories[0].findings[1].id: choose another id: 'dark' is used twice"),
                faults(GOOD.replace("id: volts", "id: dark")
                                .replace(", volts: {inside: 0.3, below: 0.6, above: 0.1}", ""))
                        .stream()
                        .filter(f -> f.contains("used twice"))
                        .toList());
    }

    @Test
    void notYaml_isRefusedWithItsRow() {
        List<CatalogueFile.Fault> faults =
                CatalogueFile.read("format: 1\ncategories: [").faults();
        assertEquals(1, faults.size());
        assertTrue(faults.get(0).row() >= 2, faults.toString());
    }

    @Test
    void keyNamedTwice_orReference_orSecondDocument_isRefused() {
        for (String bad :
                List.of("format: 1\nformat: 1", "format: &a 1\norigin: *a", "format: 1\n---\nformat: 1", "")) {
            assertTrue(CatalogueFile.read(bad).catalogue().isEmpty(), bad);
            assertTrue(!CatalogueFile.read(bad).faults().isEmpty(), bad);
        }
    }

    @Test
    void wrongShapes_areRefusedNotThrown() {
        for (String shape : List.of("[1, 2]", "just words", "{a: b}", "~")) {
            for (String key : List.of("categories", "findings", "causes", "groups", "sharedRepairs")) {
                String bad = GOOD.replaceFirst("(?s)" + key + ":.*", key + ": " + shape + "\n");
                CatalogueFile file = CatalogueFile.read(bad);
                assertTrue(file.catalogue().isPresent() == file.faults().isEmpty(), bad);
            }
        }
    }

    @Test
    void deliveredCatalogue_holdsAHundredCausesOrMore() {
        Catalogue delivered = CatalogueFile.delivered();
        assertTrue(delivered.causes() >= 100, "causes " + delivered.causes());
        assertTrue(delivered.categories().size() >= 13);
    }

    /** The starter figures stay as they were designed: the goldens and the delivered catalogue speak of the same entries. */
    @Test
    void deliveredCatalogue_keepsTheStarterNumbers() throws IOException {
        Catalogue starter = CatalogueFile.read(resource("/diagnosis/causes.json"))
                .catalogue()
                .orElseThrow();
        Catalogue delivered = CatalogueFile.delivered();
        assertEquals(75, starter.causes());
        for (CauseCategory c : starter.categories()) {
            CauseCategory d = delivered.category(c.id()).orElseThrow();
            for (Cause x : c.causes()) {
                assertEquals(numbers(x), numbers(cause(d, x.id())), x.id());
            }
            for (Finding f : c.findings()) {
                assertEquals(numbers(f), numbers(finding(d, f.id())), f.id());
            }
        }
    }

    private static Cause cause(CauseCategory c, String id) {
        return c.causes().stream().filter(x -> x.id().equals(id)).findFirst().orElseThrow();
    }

    private static Finding finding(CauseCategory c, String id) {
        return c.findings().stream().filter(f -> f.id().equals(id)).findFirst().orElseThrow();
    }

    private static List<Object> numbers(Cause c) {
        return List.of(
                c.weight(),
                c.deviations().stream().collect(Collectors.toMap(Deviation::finding, Deviation::probabilities)),
                c.confirmMinutes(),
                c.repair().minutes(),
                c.repair().verifyMinutes(),
                c.repair().fixProbability());
    }

    private static List<Object> numbers(Finding f) {
        return List.of(f.kind(), f.values(), f.background(), f.minutes());
    }

    @Test
    void deliveredReadings_allHaveLimits() {
        for (CauseCategory c : CatalogueFile.delivered().categories()) {
            for (Finding f : c.findings()) {
                assertEquals(f.kind() == Finding.Kind.READING, f.limits() != null, f.id());
                boolean bounded = f.values().stream()
                        .anyMatch(v -> ExpectedReading.of(f, v, 1).isPresent());
                boolean converts = f.limits() != null && !f.limits().unit().equals("1/d");
                assertEquals(converts, bounded, f.id());
            }
        }
    }

    /**
     * Shown its own signs, the values it raises most, every delivered cause with at least one strong sign comes among the
     * first three. Those without, such as a faulty main board, are found by ruling out others.
     */
    @Test
    void deliveredCauses_areKnownByTheirOwnSigns() {
        int checked = 0;
        for (CauseCategory c : CatalogueFile.delivered().categories()) {
            Model model = new Model(c, ModelSettings.STANDARD);
            for (Cause x : c.causes()) {
                if (hasStrongSign(c, x)) {
                    List<String> top = Ranking.of(model, signs(c, x)).all().stream()
                            .limit(3)
                            .map(Ranking.Ranked::cause)
                            .toList();
                    assertTrue(top.contains(x.id()), x.id() + " not in " + top);
                    checked++;
                }
            }
        }
        assertTrue(checked >= 115, "checked " + checked);
    }

    private static boolean hasStrongSign(CauseCategory c, Cause x) {
        return x.deviations().stream()
                .anyMatch(d ->
                        d.probabilities().get(finding(c, d.finding()).values().get(1)) >= 0.85);
    }

    private static Evidence signs(CauseCategory c, Cause x) {
        Evidence e = Evidence.NONE;
        for (Deviation d : x.deviations()) {
            Finding f = finding(c, d.finding());
            String sign = f.values().stream()
                    .max(Comparator.comparingDouble(
                            v -> d.probabilities().get(v) / f.background().get(v)))
                    .orElseThrow();
            e = e.with(Report.of(f.id(), f.id(), sign, Source.SEEN, Instant.EPOCH));
        }
        return e;
    }
}
