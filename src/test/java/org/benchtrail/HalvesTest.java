package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import org.junit.jupiter.api.Test;
import org.junit.platform.suite.api.ExcludePackages;
import org.junit.platform.suite.api.SelectPackages;

class HalvesTest {
    @Test
    void everyTest_isInOneOfTheHalves() {
        assertArrayEquals(
                HalfWithBrowser.class.getAnnotation(SelectPackages.class).value(),
                OtherHalf.class.getAnnotation(ExcludePackages.class).value());
    }
}
