package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CautionWordsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Replace the UPS batteries | MAINS BATTERY LIFTING",
                "Swap the power SUPPLY | MAINS CAPACITOR",
                "Clean the fan and the heat sink | HEAT MOVING_PARTS",
                "Reseat the memory modules | STATIC",
                "Reinstall the system | DATA_LOSS",
                "Look into the fibre transceiver | LASER",
                "The pack is swollen | SWELLING",
                "Update the driver of the scanner |",
                "Move the cellular router to the hotel |"
            })
    void words_raiseTheirCautions(String act, String expected) {
        Set<Caution> cautions = expected == null
                ? EnumSet.noneOf(Caution.class)
                : Arrays.stream(expected.split(" ")).map(Caution::valueOf).collect(Collectors.toSet());
        assertEquals(cautions, Caution.raisedBy(act));
    }

    @Test
    void everyCaution_isRaisedBySomeWord() {
        for (Caution caution : Caution.values()) {
            assertFalse(CautionWords.words(caution).isEmpty(), caution::name);
        }
    }
}
