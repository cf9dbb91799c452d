package org.benchtrail.browser;

import com.microsoft.playwright.ElementHandle;
import com.microsoft.playwright.Page;
import org.junit.jupiter.api.Assertions;

/** Somebody without a mouse: goes on with Tab until the focus is where it should be. */
final class Keys {
    private static final int MOST_TABS = 150;

    private final Page page;
    private int pressed;

    Keys(Page page) {
        this.page = page;
    }

    Keys press(String key) {
        page.keyboard().press(key);
        pressed++;
        return this;
    }

    Keys to(String field) {
        ElementHandle wanted = page.waitForSelector(field);
        for (int tabs = 0; tabs < MOST_TABS; tabs++) {
            if ((boolean) wanted.evaluate("f => f === document.activeElement")) {
                return this;
            }
            press("Tab");
        }
        return Assertions.fail(field + " is not reached in " + MOST_TABS + " tabs");
    }

    void type(String field, String text) {
        to(field);
        page.keyboard().type(text);
    }

    /** The first choice of a group takes the focus; the arrows go through them. */
    void choose(String name, String value) {
        to("input[name='" + name + "']:not([type=hidden])");
        String chosen = "input[name='" + name + "'][value='" + value + "']";
        press("Space");
        for (int arrows = 0; arrows < 8 && !page.isChecked(chosen); arrows++) {
            press("ArrowDown");
        }
        Assertions.assertTrue(page.isChecked(chosen), name);
    }

    /** How many keys were pressed that are no text. */
    int pressed() {
        return pressed;
    }
}
