package org.benchtrail.core.method;

import java.util.List;

/**
 * What kind of trouble it is. The category names the full-function checklist of the verify step (common practice, no
 * source); an item's place in the list is its stable id.
 */
public enum Category {
    POWER(
            "Power and UPS",
            List.of(
                    "Starts from cold, twice",
                    "Runs under its usual load without warning lights or alarms",
                    "UPS, if any: self-test passes and the loads are on the intended outlets",
                    "Restarts and shuts down in order")),
    HEAT(
            "Overheating",
            List.of(
                    "Runs at full load for the usual working time without slowing down or switching off",
                    "Every fan turns freely and reports its speed",
                    "Air paths are free, covers closed",
                    "Usual programs work")),
    STORAGE(
            "Drives and arrays",
            List.of(
                    "The system starts from its usual drive",
                    "Files of the user open, and a new one can be written and read back",
                    "Array, if any: optimal, with no member missing and no rebuild running",
                    "The next backup runs to its end")),
    MEMORY(
            "Memory",
            List.of(
                    "All of the fitted memory is seen at its rated speed",
                    "A full memory test passes",
                    "Usual programs work together without errors")),
    DISPLAY(
            "Display",
            List.of(
                    "Picture on every screen at its native resolution",
                    "No flicker or artefacts after warming up",
                    "Wakes from sleep on every screen")),
    WIRED(
            "Network, wired",
            List.of(
                    "Link comes up at the expected speed and duplex",
                    "Reaches the gateway, the name server and one outside address",
                    "The usual shared resources work",
                    "Stays up while traffic runs")),
    WIRELESS(
            "Network, wireless",
            List.of(
                    "Joins by itself after a restart",
                    "Signal and rate are as expected at the usual place",
                    "The usual shared resources work",
                    "Stays up while moving about as the user does")),
    PRINTING(
            "Printing",
            List.of(
                    "A test page from the device itself is clean",
                    "A page from the user's own program is clean, both sides if fitted",
                    "Every tray feeds",
                    "Shared queue, if any: prints from a second machine")),
    BATTERY(
            "Laptop battery and charging",
            List.of(
                    "Charges, and says so",
                    "Runs on battery for the expected time",
                    "Switches between mains and battery without stopping")),
    BOOT(
            "Start-up and system",
            List.of(
                    "Starts from cold to the sign-in screen, twice",
                    "No new errors in the system log",
                    "Usual programs and devices work",
                    "Updates and protection are on and current")),
    OTHER(
            "Something else",
            List.of("What the user does with it every day works", "Starts from cold", "No new errors in the logs"));

    private final String title;
    private final List<String> functions;

    Category(String title, List<String> functions) {
        this.title = title;
        this.functions = functions;
    }

    public String title() {
        return title;
    }

    /** The full-function checklist, one sentence an item. */
    public List<String> functions() {
        return functions;
    }
}
