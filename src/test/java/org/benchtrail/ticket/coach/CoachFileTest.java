package org.benchtrail.ticket.coach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.training.CoachLevel;
import org.benchtrail.core.training.CoachText;
import org.benchtrail.core.training.CoachTexts;
import org.junit.jupiter.api.Test;

class CoachFileTest {
    private static final Path FILE = Path.of("src/main/resources/training/coach.yaml");

    private static String yaml() throws IOException {
        return Files.readString(FILE, StandardCharsets.UTF_8);
    }

    private static List<Requirement.Status> gate(Step step, Requirement.State state) {
        return Requirements.of(step).stream()
                .map(r -> new Requirement.Status(r, state, "Say so."))
                .toList();
    }

    private static Map<String, CoachLevel> all(CoachLevel level) {
        return Requirements.all().stream().collect(Collectors.toMap(Requirement::code, r -> level));
    }

    @Test
    void theFile_hasATextForEachRequirement() throws IOException {
        CoachTexts texts = CoachFile.read(yaml());
        for (Requirement requirement : Requirements.all()) {
            CoachText text = texts.of(requirement.code());
            assertTrue(
                    text.why().endsWith(".") && text.good().endsWith("."),
                    () -> requirement.code() + ": both are sentences");
            assertTrue(
                    text.why().length() <= 120 && text.good().length() <= 160,
                    () -> requirement.code() + ": 'why' has at most 120 characters, 'good' 160");
        }
    }

    /** What keeps the server from starting. */
    @Test
    void aFileWithOneMissing_oneTooMany_oneTwice_orAnUnknownKey_isRefused() throws IOException {
        String yaml = yaml();
        String fewer = yaml.substring(0, yaml.indexOf("scope-known:")) + yaml.substring(yaml.indexOf("reproduced:"));
        assertThrows(IllegalArgumentException.class, () -> CoachFile.read(fewer));
        String more = yaml
                + yaml.substring(yaml.indexOf("scope-known:"), yaml.indexOf("reproduced:"))
                        .replace("scope-known", "no-such");
        assertThrows(IllegalArgumentException.class, () -> CoachFile.read(more));
        String twice = yaml + yaml.substring(yaml.indexOf("scope-known:"), yaml.indexOf("reproduced:"));
        assertThrows(IOException.class, () -> CoachFile.read(twice));
        assertThrows(IOException.class, () -> CoachFile.read(yaml.replaceFirst("  fails:", "  because:")));
        assertThrows(Exception.class, () -> CoachFile.read(yaml.replaceFirst("  judge: P", "")));
        assertThrows(Exception.class, () -> CoachFile.read(yaml.replaceFirst("\\[\\[20", "20")));
    }

    @Test
    void numbersInTheTexts_areRight() throws IOException {
        String yaml = yaml();
        // soak: 5 h between two, 95 %; half an hour of it; ten clean in a row at three of five; a drum of 30 mm
        assertTrue(yaml.contains("[[15.0 h]]") && near(15.0, 5 * Math.log(20), 0.05));
        assertTrue(yaml.contains("exp(-0.1) = 0.905") && near(0.905, Math.exp(-0.5 / 5), 0.0005));
        assertTrue(yaml.contains("once in 9500") && near(9500, Math.pow(2.5, 10), 50));
        assertTrue(yaml.contains("= 94.2 mm") && near(94.2, Math.PI * 30, 0.05));
        // outside the 12 V tolerance of 5 % by more than the meter's uncertainty
        assertTrue(yaml.contains("11.21 V, meter ±(0.5 % + 2 digits)"));
        assertTrue(11.21 * 1.005 + 0.02 < 12 * 0.95);
        assertFalse(11.38 * 1.005 + 0.02 < 12 * 0.95, "this would be too close to call");
        // age of the answer: yesterday 09:10 to 15:30
        assertTrue(yaml.contains("30 h 20 min") && 24 * 60 + 380 == 30 * 60 + 20);
    }

    private static boolean near(double stated, double exact, double within) {
        return Math.abs(stated - exact) <= within;
    }

    /** The names of causes are learned elsewhere: no text beside an early step says one of the catalogue. */
    @Test
    void noTextOfIdentify_namesACauseOfTheCatalogue() throws IOException {
        CoachTexts texts = CoachFile.read(yaml());
        String said = Requirements.of(Step.IDENTIFY).stream()
                .map(r -> texts.of(r.code()).toString().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining());
        List<String> causes;
        try (Stream<String> lines =
                Files.lines(Path.of("src/main/resources/diagnosis/catalogue.yaml"), StandardCharsets.UTF_8)) {
            causes = lines.filter(l -> l.matches("\\s+- cause: .*|\\s+name: .*"))
                    .map(l -> l.replaceFirst(".*?: ", "").strip().toLowerCase(Locale.ROOT))
                    .toList();
        }
        assertTrue(causes.size() > 50, causes::toString);
        causes.forEach(cause -> assertFalse(said.contains(cause), cause));
    }

    @Test
    void eachLevel_tellsItsMeasure() throws IOException {
        CoachTexts texts = CoachFile.read(yaml());
        CoachText text = texts.of("scope-known");
        for (CoachLevel level : CoachLevel.values()) {
            CoachView view = CoachView.of(gate(Step.IDENTIFY, Requirement.State.MISSING), all(level), texts, false);
            CoachView.Line line = view.of("scope-known");
            assertEquals(
                    switch (level) {
                        case EXAMPLE, COMPLETION -> text.why();
                        case PROMPT -> text.good();
                        case SILENT -> "";
                    },
                    line.lead());
            assertEquals(level == CoachLevel.COMPLETION, line.blank());
            CoachView.Line hazards = view.of("hazards-screened");
            assertTrue(hazards.safety() && !line.safety());
            assertEquals(
                    level == CoachLevel.SILENT
                            ? ""
                            : texts.of("hazards-screened").good(),
                    hazards.lead());
        }
    }

    /** While a forecast is due, an example of a theory could be taken for a hint. */
    @Test
    void whileTheForecastIsDue_noExampleOfATheoryIsTold() throws IOException {
        CoachTexts texts = CoachFile.read(yaml());
        for (Step step : Step.values()) {
            CoachView veiled =
                    CoachView.of(gate(step, Requirement.State.MISSING), all(CoachLevel.EXAMPLE), texts, true);
            veiled.lines().values().forEach(l -> assertEquals(step != Step.THEORIZE, l.examples(), l.code()));
        }
        CoachView open =
                CoachView.of(gate(Step.THEORIZE, Requirement.State.MISSING), all(CoachLevel.EXAMPLE), texts, false);
        assertTrue(open.lines().values().stream().allMatch(CoachView.Line::examples));
    }
}
