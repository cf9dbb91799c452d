package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CautionWordsTest {
    /** A phrase with the cautions it has to raise, and those it may raise besides. */
    private record Phrase(String words, Set<Caution> must, Set<Caution> may) {
        Set<Caution> missed() {
            return without(must, Caution.raisedBy(words));
        }

        Set<Caution> tooMany() {
            return without(without(Caution.raisedBy(words), must), may);
        }
    }

    private static final List<Phrase> PHRASES = phrases();

    @Test
    void whatTechniciansSay_missesNoDanger_andWarnsSeldomForNothing() {
        List<String> missed = lines(PHRASES, Phrase::missed);
        List<String> tooMany = lines(PHRASES, Phrase::tooMany);
        int raised =
                PHRASES.stream().mapToInt(p -> Caution.raisedBy(p.words).size()).sum();
        long harmless = PHRASES.stream().filter(p -> p.must.isEmpty()).count();
        System.out.printf(
                "cautions: %d phrases, %d of them harmless, %d cautions raised; missed %d; too many in %d phrases (%.1f %%)%n",
                PHRASES.size(),
                harmless,
                raised,
                missed.size(),
                tooMany.size(),
                100.0 * tooMany.size() / PHRASES.size());
        assertTrue(PHRASES.size() >= 300, "fewer than 300 phrases");
        assertTrue(harmless * 4 >= PHRASES.size(), "too few harmless phrases");
        assertEquals(List.of(), missed);
        assertTrue(tooMany.size() * 20 <= PHRASES.size(), () -> String.join("\n", tooMany));
    }

    @Test
    void everyCaution_isAskedForBySomePhrase() {
        Set<Caution> asked = PHRASES.stream()
                .flatMap(p -> p.must.stream())
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Caution.class)));
        assertEquals(EnumSet.allOf(Caution.class), asked);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Replace the UPS batteries | MAINS BATTERY LIFTING",
                "Swap the power SUPPLY | MAINS CAPACITOR",
                "Reseat the memory modules | STATIC",
                "Reinstall the system | DATA_LOSS",
                "Look into the fibre transceiver | LASER",
                "The pack is swollen | SWELLING",
                "Update the driver of the scanner |",
                "Move the cellular router to the hotel |",
                "Put the plug into the wall socket | MAINS",
                "Read the mains voltage at the outlet | LIVE",
                "400VAC at the feed | LIVE",
                "48 V at the phone's port |",
                "Replace the wireless adapter |",
                "Read the label of the supply and the plate of the UPS battery |",
                "Note the time, the power supply clicks, the UPS battery beeps |",
                "Read the manual and reseat the memory modules | STATIC"
            })
    void words_raiseTheirCautions_andNoOthers(String act, String expected) {
        assertEquals(cautions(expected, " "), Caution.raisedBy(act));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "The fan stands still and the supply hums |",
                "Switch and router end at outlets marked surge only |",
                "Opened the supply: the fuse is black | MAINS CAPACITOR",
                "231 V at the outlet | LIVE",
                "The battery is swollen | SWELLING",
                "It works since the drive was swapped | STATIC DATA_LOSS"
            })
    void whatIsTold_raisesWhatHandsWereLaidOn(String told, String expected) {
        assertEquals(cautions(expected, " "), Caution.toldBy(told));
    }

    @Test
    void everyText_endsWithWhatComesFirst() {
        for (Caution caution : Caution.values()) {
            assertTrue(
                    caution.text()
                            .endsWith(
                                    "The maker's instructions, site rules and local code come first; wiring and earthing"
                                            + " are a licensed electrician's work."),
                    caution::name);
        }
    }

    private static List<String> lines(List<Phrase> phrases, Function<Phrase, Set<Caution>> which) {
        return phrases.stream()
                .filter(p -> !which.apply(p).isEmpty())
                .map(p -> p.words + ": " + which.apply(p))
                .toList();
    }

    private static Set<Caution> without(Set<Caution> all, Set<Caution> these) {
        Set<Caution> rest = EnumSet.noneOf(Caution.class);
        rest.addAll(all);
        rest.removeAll(these);
        return rest;
    }

    private static Set<Caution> cautions(String names, String between) {
        return names == null || names.isBlank()
                ? Set.of()
                : Arrays.stream(names.split(between))
                        .map(name -> Caution.valueOf(name.strip()))
                        .collect(Collectors.toSet());
    }

    private static List<Phrase> phrases() {
        List<Phrase> phrases = new ArrayList<>();
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                CautionWordsTest.class.getResourceAsStream("caution-phrases.tsv"), StandardCharsets.UTF_8))) {
            lines.lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#") && !line.startsWith("phrase\t"))
                    .map(line -> line.split("\t", -1))
                    .forEach(cells ->
                            phrases.add(new Phrase(cells[0], cautions(cells[1], ","), cautions(cells[2], ","))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return phrases;
    }
}
