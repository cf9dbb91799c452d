package org.benchtrail.core.method;

import java.util.List;

/**
 * What kind of trouble it is. The category names the full-function checklist of the verify step (common practice, no
 * source); an item's place in the list is its stable id.
 */
public enum Category {
    POWER(
            "Power and UPS",
            "power",
            List.of(
                    "Starts from cold, twice",
                    "Runs under its usual load without warning lights or alarms",
                    "UPS, if any: self-test passes and the loads are on the intended outlets",
                    "Restarts and shuts down in order")),
    HEAT(
            "Overheating",
            "heat",
            List.of(
                    "Runs at full load for the usual working time without slowing down or switching off",
                    "Every fan turns freely and reports its speed",
                    "Air paths are free, covers closed",
                    "Usual programs work")),
    STORAGE(
            "Drives and arrays",
            "storage",
            List.of(
                    "The system starts from its usual drive",
                    "Files of the user open, and a new one can be written and read back",
                    "Array, if any: optimal, with no member missing and no rebuild running",
                    "The next backup runs to its end")),
    MEMORY(
            "Memory",
            "memory",
            List.of(
                    "All of the fitted memory is seen at its rated speed",
                    "A full memory test passes",
                    "Usual programs work together without errors")),
    DISPLAY(
            "Display",
            "display",
            List.of(
                    "Picture on every screen at its native resolution",
                    "No flicker or artefacts after warming up",
                    "Wakes from sleep on every screen")),
    WIRED(
            "Network, wired",
            "wired",
            List.of(
                    "Link comes up at the expected speed and duplex",
                    "Reaches the gateway, the name server and one outside address",
                    "The usual shared resources work",
                    "Stays up while traffic runs")),
    WIRELESS(
            "Network, wireless",
            "wifi",
            List.of(
                    "Joins by itself after a restart",
                    "Signal and rate are as expected at the usual place",
                    "The usual shared resources work",
                    "Stays up while moving about as the user does")),
    PRINTING(
            "Printing",
            "print",
            List.of(
                    "A test page from the device itself is clean",
                    "A page from the user's own program is clean, both sides if fitted",
                    "Every tray feeds",
                    "Shared queue, if any: prints from a second machine")),
    BATTERY(
            "Laptop battery and charging",
            "battery",
            List.of(
                    "Charges, and says so",
                    "Runs on battery for the expected time",
                    "Switches between mains and battery without stopping")),
    BOOT(
            "Start-up and system",
            "boot",
            List.of(
                    "Starts from cold to the sign-in screen, twice",
                    "No new errors in the system log",
                    "Usual programs and devices work",
                    "Updates and protection are on and current")),
    ARRAY(
            "Disk array",
            "array",
            List.of(
                    "Array optimal: no member missing, no rebuild running",
                    "A hot spare, if the site keeps one, is assigned again",
                    "Volumes are mounted, a file can be written and read back",
                    "The next backup runs to its end",
                    "The monitoring reports this array again")),
    VOICE(
            "Voice over the network",
            "voice",
            List.of(
                    "A call in each direction, five minutes, clear on both sides",
                    "Hold, transfer and voice mail work",
                    "The emergency number is reachable by the site's own test procedure")),
    USB(
            "USB and attached devices",
            "usb",
            List.of(
                    "The device is recognised at the port where it belongs",
                    "It works after a restart and after waking from sleep",
                    "Other devices on the same hub still work")),
    OTHER(
            "Something else",
            "",
            List.of("What the user does with it every day works", "Starts from cold", "No new errors in the logs"));

    private final String title;
    private final String catalogue;
    private final List<String> functions;

    Category(String title, String catalogue, List<String> functions) {
        this.title = title;
        this.catalogue = catalogue;
        this.functions = functions;
    }

    public String title() {
        return title;
    }

    /** Id of its part of the cause catalogue; empty if that has none. */
    public String catalogue() {
        return catalogue;
    }

    /** The full-function checklist, one sentence an item. */
    public List<String> functions() {
        return functions;
    }
}
