package org.benchtrail.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.advice.ExpectedReading;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Condition;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Hints;
import org.benchtrail.core.diagnosis.Making;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.Nominal;
import org.benchtrail.core.diagnosis.Phrase;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
        assertTrue(delivered.causes() >= 220, "causes " + delivered.causes());
        assertTrue(delivered.categories().stream().allMatch(c -> c.causes().size() >= 12), "every kind has its share");
        assertTrue(delivered.categories().size() >= 13);
    }

    /** In format 1 a side without a name counted as inside: what was ranked then ranks so again. */
    @Test
    void catalogueOfFormatOne_judgesAsItDid() throws IOException {
        Catalogue old = CatalogueFile.read(resource("/diagnosis/catalogue-1.yaml"))
                .catalogue()
                .orElseThrow();
        assertEquals(
                "inside",
                finding(old.category("power").orElseThrow(), "p3")
                        .judge(262, 0, 0.95)
                        .value());
        assertEquals(
                "outside",
                finding(old.category("memory").orElseThrow(), "m8")
                        .judge(1.7, 0, 0.95)
                        .value());
        assertTrue(old.categories().stream()
                .allMatch(c -> c.hints().equals(Hints.NONE)
                        && c.findings().stream()
                                .allMatch(f -> f.making() == null && f.label().equals(f.question()))));
    }

    private static final String FULL = """
            format: 2
            categories:
              - id: lamp
                title: Lamp
                escalateMinutes: 60
                findings:
                  - id: dark
                    label: stays dark
                    do: Switch on.
                    question: Does it stay dark?
                    way: look
                    kind: answer
                    values: ["no", "yes"]
                    background: 0.2
                    minutes: 1
                  - id: volts
                    label: voltage at the socket
                    question: What does the socket give?
                    kind: reading
                    values: [inside, below, above]
                    background: {inside: 0.9, below: 0.07, above: 0.03}
                    minutes: 3
                    invasive: true
                    risk: high
                    cautions: [LIVE, MAINS]
                    needs: [outage-announced]
                    unless: [{finding: dark, is: ["no"]}]
                    narrows: dark
                    fleeting: true
                    limits:
                      by: mains
                      unit: V
                      cases:
                        "120": {low: 108, high: 126, source: law}
                        "230": {low: 207, high: 253, source: law}
                causes:
                  - id: bulb
                    name: bulb
                    weight: 3
                    deviations: {dark: 0.95, volts: {inside: 0.3, below: 0.6, above: 0.1}}
                    confirm: swap it
                    confirmMinutes: 2
                    confirmBy: [dark]
                    repair: {text: new bulb, minutes: 2, risk: high, needs: [owner-asked]}
                feeds:
                  - {changed: HARDWARE, finding: dark, "YES": "yes", "NO": "no", source: REPORTED}
                  - {hazard: SMELL, finding: dark, present: "yes", presentSource: SEEN, absent: "no", absentSource: PRESUMED}
                  - {scope: [SEVERAL, SITE], finding: dark, value: "no", source: REPORTED}
                  - {reading: [mains], unit: V, without: [battery], finding: volts}
                  - {bench: mains, signal: volts, finding: volts, source: SEEN}
                phrases:
                  - {finding: dark, value: "yes", words: [dead, "no light*"]}
            """;

    @Test
    void formatTwo_isReadInFull() {
        CatalogueFile file = CatalogueFile.read(FULL);
        assertEquals(List.of(), file.faults());
        CauseCategory lamp = file.catalogue().orElseThrow().category("lamp").orElseThrow();
        Finding volts = finding(lamp, "volts");
        assertEquals(
                new Making(
                        "voltage at the socket",
                        "",
                        Making.Way.MEASURE,
                        true,
                        Set.of("LIVE", "MAINS"),
                        List.of("outage-announced"),
                        List.of(new Condition("dark", List.of("no"))),
                        "dark",
                        true),
                volts.making());
        assertEquals(
                new Nominal.Case(207.0, 253.0, "law"),
                volts.limits().nominal().cases().get("230"));
        assertEquals("Switch on.", finding(lamp, "dark").act());
        assertEquals(List.of("dark"), lamp.causes().get(0).confirmBy());
        assertEquals(
                List.of(
                        "changed/HARDWARE/YES yes",
                        "changed/HARDWARE/NO no",
                        "hazard/SMELL/present yes",
                        "hazard/SMELL/absent no",
                        "scope/SEVERAL no",
                        "scope/SITE no",
                        "bench/mains/volts "),
                lamp.hints().feeds().stream()
                        .map(f -> f.sign() + " " + f.value())
                        .toList());
        assertEquals(Source.PRESUMED, lamp.hints().feeds().get(3).source());
        assertEquals(1, lamp.hints().readings().size());
        assertEquals(
                List.of("dead", "no light*"),
                lamp.hints().phrases().get(0).words().stream().map(Phrase::text).toList());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            dark | leave out 'dark': it tells a hazard
            volts | name a finding of this category that is an answer: 'volts' is none
            other | name a finding of this category that is an answer: 'other' is none
            """)
    void complaint_isAnAnswer_andNeverAHazard(String complaint, String reason) {
        String text = FULL.replace("    phrases:\n", "    complaints: [" + complaint + "]\n    phrases:\n");
        List<CatalogueFile.Fault> faults = CatalogueFile.read(text).faults();
        assertTrue(
                faults.stream()
                        .anyMatch(f -> f.field().equals("categories[0].complaints")
                                && f.reason().startsWith(reason)),
                faults.toString());
        String withoutHazard = text.replaceFirst(" *- \\{hazard: .*\n", "");
        assertEquals(
                complaint.equals("dark"),
                CatalogueFile.read(withoutHazard).faults().isEmpty());
    }

    /** One mistake at a time, each told in its row. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            label: stays dark | label: stays dark. | 8 | findings[0].label
            label: stays dark | label: Is it dark? | 8 | findings[0].label
            do: Switch on. | do: Switch on | 9 | findings[0].do
            question: Does it stay dark? | question: it stays dark | 10 | findings[0].question
            way: look | way: guess | 11 | findings[0].way
            cautions: [LIVE, MAINS] | cautions: [] | 25 | findings[1].cautions
            cautions: [LIVE, MAINS] | cautions: [FIRE] | 25 | findings[1].cautions[0]
            needs: [outage-announced] | needs: [] | 26 | findings[1].needs
            needs: [outage-announced] | needs: [luck] | 26 | findings[1].needs
            risk: high | risk: none | 24 | findings[1].risk
            invasive: true | way: look | 23 | findings[1].way
            unless: [{finding: dark, is: ["no"]}] | unless: [{finding: volts, is: [inside]}] | 27 | findings[1].unless[0]
            unless: [{finding: dark, is: ["no"]}] | unless: [{finding: dark, is: ["no"]}, {finding: dark, is: ["no"]}] | 27 | findings[1].unless[1]
            narrows: dark | narrows: volts | 28 | findings[1].narrows
            by: mains | by: moon | 31 | findings[1].limits.by
            "120": {low: 108 | "110": {low: 108 | 34 | findings[1].limits.cases
            low: 108, high: 126 | low: 128, high: 126 | 34 | findings[1].limits.cases.120
            values: [inside, below, above] | values: [inside, outside] | 20 | findings[1].values
            confirmBy: [dark] | confirmBy: [bright] | 43 | causes[0].confirmBy
            risk: high, needs: [owner-asked] | risk: high | 44 | causes[0].repair.needs
            needs: [owner-asked] | needs: [luck] | 44 | causes[0].repair.needs
            changed: HARDWARE | changed: HARDWEAR | 46 | feeds
            signal: volts | signal: watts | 46 | feeds
            signal: volts, finding: volts | signal: volts, finding: volts, value: above | 46 | feeds
            reading: [mains], unit: V | reading: [mains], unit: W | 46 | feeds
            value: "no", source: REPORTED | value: perhaps, source: REPORTED | 46 | feeds
            value: "yes", words: [dead | value: perhaps, words: [dead | 52 | phrases[0]
            words: [dead | words: [d | 52 | phrases[0].words
            "no light*" | "no *light" | 52 | phrases[0].words
            """)
    void mistakeOfFormatTwo_isToldInItsRow(String right, String wrong, int row, String field) {
        assertTrue(FULL.contains(right), right);
        String bad = FULL.replaceFirst(
                java.util.regex.Pattern.quote(right), java.util.regex.Matcher.quoteReplacement(wrong));
        List<CatalogueFile.Fault> faults = CatalogueFile.read(bad).faults();
        assertTrue(
                faults.stream().anyMatch(f -> f.row() == row && f.field().equals("categories[0]." + field)),
                faults.toString());
    }

    /** What was recorded under an id of before is that of the cause that has another one now. */
    @Test
    void deliveredCauses_areKnownByTheirOldIds() throws IOException {
        Catalogue before = CatalogueFile.read(resource("/diagnosis/catalogue-2.yaml"))
                .catalogue()
                .orElseThrow();
        int known = 0;
        for (CauseCategory c : CatalogueFile.delivered().categories()) {
            Model model = new Model(c, ModelSettings.STANDARD);
            for (Cause old : before.category(c.id()).orElseThrow().causes()) {
                Cause now = c.cause(old.id()).orElseThrow();
                assertEquals(old.name(), now.name());
                assertTrue(now.id().matches(c.id() + "/[a-z0-9-]+"), now.id());
                assertEquals(model.index(now.id()), model.index(old.id()));
                known++;
            }
        }
        assertEquals(162, known);
    }

    /** Every pair of a category is told apart by some finding with 6 dB or more. */
    @Test
    void deliveredCauses_areToldApart() {
        List<String> alike = new ArrayList<>();
        for (CauseCategory c : CatalogueFile.delivered().categories()) {
            Model model = new Model(c, ModelSettings.STANDARD);
            for (Cause a : c.causes()) {
                for (Cause b : c.causes()) {
                    if (a.id().compareTo(b.id()) < 0 && apart(model, a, b) < 6) {
                        alike.add(a.id() + " and " + b.id());
                    }
                }
            }
        }
        assertEquals(List.of(), alike);
    }

    private static double apart(Model model, Cause a, Cause b) {
        return model.category().findings().stream()
                .flatMap(f -> f.values().stream()
                        .map(v -> model.likelihood(f.id(), v, a.id()) / model.likelihood(f.id(), v, b.id())))
                .mapToDouble(ratio -> Math.abs(10 * Math.log10(ratio)))
                .max()
                .orElseThrow();
    }

    /** A stored text of format 1 reads as ever: the goldens and it speak of the same entries. */
    @Test
    void catalogueOfFormatOne_keepsTheStarterNumbers() throws IOException {
        Catalogue starter = CatalogueFile.read(resource("/diagnosis/causes.json"))
                .catalogue()
                .orElseThrow();
        Catalogue delivered = CatalogueFile.read(resource("/diagnosis/catalogue-1.yaml"))
                .catalogue()
                .orElseThrow();
        assertEquals(75, starter.causes());
        assertEquals(130, delivered.causes());
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
                boolean known = f.limits() != null && f.limits().nominal() == null;
                assertEquals(known, bounded, f.id());
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

    /** A server goes on beside one of a later release, which may have stored what this one does not know. */
    @Test
    void storedByALaterRelease_isReadWithoutWhatOnlyThatKnows() {
        String delivered = CatalogueFile.deliveredText();
        int paths = delivered.indexOf("\n---\n");
        String entry = "\n  - id: power\n";
        String causes = delivered.substring(0, paths).replace(entry, entry + "    remarks: [of a later release]\n");
        String places = delivered.substring(paths).replace(entry, entry + "    seen: by all\n");
        for (String one : List.of(causes + delivered.substring(paths), delivered.substring(0, paths) + places)) {
            assertEquals(1, CatalogueFile.read(one).faults().size(), "whoever writes it is told");
        }
        String later = causes + places;
        CatalogueFile stored = CatalogueFile.stored(later);
        assertEquals(List.of(), stored.faults());
        assertEquals(CatalogueFile.read(delivered).catalogue(), stored.catalogue());
        assertEquals(CatalogueFile.read(delivered).paths(), stored.paths());
    }
}
