package org.benchtrail.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.practice.Stated.Span;
import org.benchtrail.core.practice.desktop.DesktopPart;
import org.benchtrail.core.practice.job.DesktopAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.OwnJob;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The text of a mentor's job: what is taken, and each mistake by its line with what to do. */
class OwnJobTextTest {
    /** Line by line, so that a test can name one. */
    private static final List<String> SOUND = List.of(
            "family: desktop",
            "symptom: Slow after an hour",
            "message: It crawls.",
            "parameters:",
            "  ROOM: 22 to 27 °C",
            "  FACE: 2e-4 m²",
            "faults:",
            "  DUST:",
            "    AIR_PATH: 0.25",
            "  SLOW_FAN:",
            "knows:",
            "  ask-noise: wrong",
            "hazards:",
            "  mains-lead: The lead is crushed.",
            "alike:",
            "  - [DUST, SLOW_FAN]");

    private static List<OwnJobText.Fault> faults(String text) {
        OwnJobText.Read read = OwnJobText.read(text);
        assertEquals(read.faults().isEmpty(), read.job().isPresent());
        return read.faults();
    }

    @Test
    void soundText_isTheJobItSays() {
        OwnJob job = OwnJobText.read(String.join("\n", SOUND)).job().orElseThrow();
        assertEquals(Family.DESKTOP, job.family());
        assertEquals("render desktop", job.device(), "left out: the family's");
        assertEquals(
                Map.of(DesktopPart.ROOM, new Span(22, 27), DesktopPart.FACE, new Span(2e-4, 2e-4)), job.parameters());
        assertEquals(List.of("DUST", "SLOW_FAN"), List.copyOf(job.faults().keySet()));
        assertEquals(
                Map.of(DesktopPart.AIR_PATH, new Span(0.25, 0.25)), job.faults().get("DUST"));
        assertEquals(Map.of(DesktopAct.ASK_NOISE, OwnJob.Knows.WRONG), job.knows());
        assertEquals(Map.of("MAINS_LEAD", "The lead is crushed."), job.hazards());
        assertEquals(Set.of(Set.of("DUST", "SLOW_FAN")), job.alike());
    }

    @Test
    void delivered_example_isSound() {
        assertEquals(List.of(), faults(OwnJobPage.example()));
    }

    /** One line of the sound text is another; that line is named, and alone. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "1|family: toaster|1|family is one of desktop, drive, power, supply, memory, array.",
                "1|family: [desktop]|1|family is one of",
                "2|symptom:|2|Write words behind symptom, or leave it out.",
                "2|symptom: [a, b]|2|Write words behind symptom",
                "3|massage: It crawls.|3|There is no 'massage' in a job. There is: family, symptom, message",
                "3|family: drive|3|'family' is here twice: keep one of them.",
                "3|category: memory|3|answer the questions of HEAT",
                "5|  ROOM: 22 to 27|5|ROOM is in °C: write that behind the number.",
                "5|  ROOM: 27 to 22 °C|5|Write the smaller number of ROOM first.",
                "5|  ROOM: 22 to 60 °C|5|ROOM goes from 18 to 38 °C: keep within that.",
                "5|  ROOM: 17.9 °C|5|ROOM goes from 18 to 38 °C",
                "5|  ROOM: warm|5|Write ROOM as a number or a range, such as 18 °C or 18 to 38 °C.",
                "5|  ROOM: NaN °C|5|Write ROOM as a number",
                "5|  ROOM: [22, 27]|5|Write ROOM as a number",
                "5|  ROOM: 1e999 °C|5|ROOM goes from 18 to 38 °C",
                "5|  TENT: 22 °C|5|There is no 'TENT' here. There is: IDLE_WATTS",
                "5|  face: 2e-4 m²|6|'FACE' is here twice",
                "5|  AIR_PATH: 0.5|5|The fault DUST sets AIR_PATH itself: write it below DUST.",
                "6|  CONTACT: 0.5 m|6|CONTACT has no unit: leave out 'm'.",
                "8|  DUSST:|8|There is no 'DUSST' here. There is: DUST, SLOW_FAN",
                "9|    FREE: 3 %|9|There is no 'FREE' here.",
                "10|  dust:|10|'dust' is here twice",
                "12|  ask-noise: maybe|12|Say how the requester answers ask-noise: right, wrong or unknown.",
                "12|  ask-storm: right|12|There is no 'ask-storm' here. There is: ask-settings",
                "14|  mains-lead:|14|Say behind MAINS_LEAD in one line what is noticed of it",
                "14|  ghosts: Boo.|14|There is no 'ghosts' here. There is: SMELL",
                "16|  - [DUST]|16|A pair is two faults of this device",
                "16|  - [DUST, DUST]|16|A pair is two faults of this device",
                "16|  - [DUST, CABLE]|16|A pair is two faults of this device",
                "16|  - [LOOSE_SINK, OVERCLOCK]|16|Neither of the two is a fault of this job",
                "15|backup: readable|15|Nothing on this device is backed up: leave backup out.",
                "16|  - {a: *x}|16|Mend the YAML here",
            })
    void mistake_isNamedByItsLine(int line, String instead, int named, String sentence) {
        java.util.ArrayList<String> lines = new java.util.ArrayList<>(SOUND);
        lines.set(line - 1, instead);
        if (line == 15) {
            lines.remove(15);
        }
        List<OwnJobText.Fault> faults = faults(String.join("\n", lines));
        assertTrue(
                faults.stream().anyMatch(f -> f.line() == named && f.sentence().contains(sentence)), faults::toString);
    }

    @Test
    void allMistakes_areNamedAtOnce() {
        assertEquals(
                List.of(2, 3, 5, 7),
                faults(
                                "family: drive\nsymptoms: x\nmessage: []\nparameters:\n  FREE: 200 %\nfaults:\n  RUST:\nsymptom: y\n")
                        .stream()
                        .map(OwnJobText.Fault::line)
                        .sorted()
                        .toList());
    }

    @Test
    void whatIsMissing_isAskedFor() {
        String told = faults("device: x\n").toString();
        assertTrue(told.contains("Say which device it is"), told);
        assertTrue(told.contains("symptom is missing"), told);
        assertTrue(faults("family: array\nsymptom: s\nmessage: m\n").toString().contains("faults, and below it"));
        assertEquals(1, faults("").size());
        assertEquals(1, faults("- a\n- b\n").size());
    }

    /** Neither size, depth, references nor several documents make the server work. */
    @Test
    void bombs_areRefusedAtOnce() {
        assertTrue(faults("a".repeat(20_001)).toString().contains("Shorten it to 20000 characters."));
        StringBuilder lol = new StringBuilder("a: &a [x, x]\n");
        for (char c = 'b'; c < 'j'; c++) {
            lol.append(c)
                    .append(": &")
                    .append(c)
                    .append(" [*")
                    .append((char) (c - 1))
                    .append(", *")
                    .append((char) (c - 1))
                    .append("]\n");
        }
        assertTrue(
                faults(lol.toString()).toString().contains("line=2"),
                faults(lol.toString()).toString());
        assertEquals(1, faults("a: " + "[".repeat(9000)).size());
        assertFalse(faults("family: array\n---\nfamily: array\n").isEmpty());
    }
}
