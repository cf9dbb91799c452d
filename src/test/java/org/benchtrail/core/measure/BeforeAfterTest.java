package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;

class BeforeAfterTest {
    private static final String SCIPY = "SciPy 1.17, ttest_ind with unequal variances";
    private static final double[] HOT = {91.2, 90.4, 92.0, 91.1};
    private static final double[] COOL = {72.3, 71.8, 73.0, 72.5, 72.1};

    @Test
    void of_clearChange_saysSoWithInterval() {
        BeforeAfter compared = BeforeAfter.of(HOT, COOL, Units.CELSIUS, 0.95);
        assertTrue(compared.changed());
        Published.check(SCIPY, -48.97717967736195, compared.welch().t(), 1e-9);
        Published.check(SCIPY, 4.525275115905641e-08, compared.welch().pValue(), 1e-15);
        Published.check(SCIPY, 5.147239577757821, compared.welch().degreesOfFreedom(), 1e-10);
        Published.check(SCIPY, -19.815115350068123, compared.welch().interval().lower(), 1e-9);
        Published.check(SCIPY, -17.854884649931893, compared.welch().interval().upper(), 1e-9);
        String sentence = compared.sentence();
        assertTrue(
                sentence.startsWith("The mean went from 91.18 °C to 72.34 °C, 18.8 °C lower (with 95.0 % confidence"
                        + " between 19.8 °C lower and 17.9 °C lower;"),
                sentence);
        assertTrue(sentence.endsWith("the value changed."), sentence);
    }

    @Test
    void of_nothingButScatter_showsNoChange() {
        BeforeAfter compared =
                BeforeAfter.of(new double[] {91.2, 90.4, 92.0}, new double[] {91.0, 91.9, 90.6}, Units.CELSIUS, 0.95);
        assertFalse(compared.changed());
        assertTrue(compared.sentence().endsWith("no change is shown."), compared.sentence());
        assertTrue(compared.welch().interval().contains(0));
    }

    @Test
    void of_swappedSides_isTheOppositeDifference() {
        BeforeAfter one = BeforeAfter.of(HOT, COOL, Units.CELSIUS, 0.95);
        BeforeAfter other = BeforeAfter.of(COOL, HOT, Units.CELSIUS, 0.95);
        assertEquals(one.welch().difference(), -other.welch().difference());
        assertEquals(one.welch().pValue(), other.welch().pValue());
        assertEquals(one.welch().interval().lower(), -other.welch().interval().upper());
    }

    @Test
    void of_readingsThatCannotBeCompared_areRefused() {
        assertThrows(Invalid.class, () -> BeforeAfter.of(new double[] {1}, COOL, Units.CELSIUS, 0.95));
        assertThrows(Invalid.class, () -> BeforeAfter.of(HOT, new double[0], Units.CELSIUS, 0.95));
        double[] still = {40, 40, 40};
        Invalid refused = assertThrows(Invalid.class, () -> BeforeAfter.of(still, still, Units.CELSIUS, 0.95));
        assertTrue(refused.getMessage().contains("do not scatter"), refused.getMessage());
        assertThrows(Invalid.class, () -> BeforeAfter.of(HOT, COOL, Units.CELSIUS, 1.5));
    }
}
