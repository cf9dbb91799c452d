package org.benchtrail.platform.form;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LiveLinksTest {
    @Test
    void whatIsThereIsLedTo_andWhatHasGoneIsSaidOnly() {
        assertEquals(
                "<li><a href=\"#here\">Here</a></li><li><span data-gone=\"there\">Not <b>there</b></span></li><input id=\"here\">",
                LiveLinks.in(
                        "<li><a href=\"#here\">Here</a></li><li><a href=\"#there\">Not <b>there</b></a></li><input id=\"here\">"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "<p>no link</p>",
                "<a href=\"/elsewhere#part\">x</a>",
                "<a href=\"#cut",
                "<a href=\"#cut\">off"
            })
    void whatIsNoLinkWithinThePageStays(String page) {
        assertEquals(page, LiveLinks.in(page));
    }
}
