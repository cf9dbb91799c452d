package org.benchtrail.core.training;

import static java.util.Map.entry;

import java.util.Map;

/** What each fault is, as a debrief says it. */
public final class FaultWords {
    private static final Map<String, String> WORDS = Map.ofEntries(
            entry("DUST", "a dust mat between fan and fins"),
            entry("SLOW_FAN", "a worn fan that turns at a third of its speed"),
            entry("FAN_CURVE", "a fan set to a low speed that never changes"),
            entry("FAN_STALLED", "a fan that stands still"),
            entry("DRIED_PASTE", "dried paste between chip and sink"),
            entry("LOOSE_SINK", "a heat sink that hardly touches the chip"),
            entry("OVERCLOCK", "clock and voltage raised above their defaults"),
            entry("CASE_BLOCKED", "a case that gets almost no air"),
            entry("HOT_ROOM", "a hot room, and some dust"),
            entry("SENSOR_HIGH", "a sensor that reads 22 K too high: the chip itself was cool"),
            entry("FAILING_SURFACE", "a surface that goes bad, more by the hour"),
            entry("SCAR_AND_CABLE", "a damaged data cable; the reallocated sectors are old and do not grow"),
            entry("DATA_CABLE", "a damaged data cable"),
            entry("PORT", "a bad port: it goes with the port and not with the cable"),
            entry("POWER_PLUG", "a plug of the supply with a bad contact: the drive restarts as it spins up"),
            entry("HOT_DRIVE", "a drive that gets no air"),
            entry("DISK_FULL", "a volume that is full"),
            entry("BACKGROUND_LOAD", "a task in the background that keeps the drive busy"),
            entry("WORN_BATTERY", "a worn battery: it passes the self-test and does not last"),
            entry("BAD_BLOCK", "one bad block in the battery set"),
            entry("SERVER_WITHOUT_BATTERY", "the server on an outlet without battery"),
            entry("PRINTER_ON_BATTERY", "the printer on a battery outlet, too much when it heats"),
            entry("LONG_CIRCUIT", "a long circuit whose voltage falls while the heater runs"),
            entry("SENSITIVITY", "a UPS set to go over to battery at far too high a voltage"),
            entry("AGED_CAPACITOR", "an aged capacitor in the supply: it does not pass a dip of the mains"),
            entry("HIGH_RESISTANCE", "a supply whose +12 V falls under load and is good at rest"),
            entry("STANDOFF", "a standoff under the board that shorts +12 V to the case"),
            entry("DEAD_OUTLET", "an outlet without mains"),
            entry("BAD_CONTACT", "an outlet whose contact gives way under load"),
            entry("SMALL_SUPPLY", "a supply made for less than what was built in"),
            entry("MODULE", "a module whose cells err"),
            entry("SLOT", "a slot that errs with whichever module is in it"),
            entry("PROFILE", "a speed profile above what the modules are stable at"),
            entry("HEAT", "modules that get no air and err once they are hot"),
            entry("MEMBER", "a member drive that has failed"),
            entry("BAY", "a bay that drops whichever drive is in it"),
            entry("CACHE", "a worn battery of the write cache, so that the cache is not used for writing"),
            entry("CHECKING", "a background check that runs by day"));

    private FaultWords() {}

    /** @throws IllegalArgumentException if there is no such fault */
    public static String of(String fault) {
        String words = WORDS.get(fault);
        if (words == null) {
            throw new IllegalArgumentException("no such fault: " + fault);
        }
        return words;
    }
}
