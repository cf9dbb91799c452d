package org.benchtrail.core.practice.job;

import java.util.List;

/** What can be done with a computer whose memory may err. */
public enum MemoryAct implements DeviceAct {
    ASK_ADDED(Way.ASK, 1, "whether it began right after memory was added"),
    ASK_HARDWARE(Way.ASK, 1, "whether hardware was changed before it began"),
    ASK_SETTINGS(Way.ASK, 1, "whether memory settings were changed before it began"),
    LOOK_CODES(Way.LOOK, 3, "into the log: do the codes of the stops differ?"),
    LOOK_START(Way.LOOK, 1, "for a beep or light code for memory at the start"),
    LOOK_MIXED(Way.LOOK, 5, "at the firmware's page: are modules of different type or speed mixed?"),
    LOOK_FITTED(Way.LOOK, 3, "whether less memory or fewer channels are shown than fitted"),
    LOOK_PAGE_FILE(Way.LOOK, 2, "whether the page file is off or tiny"),
    SAVE_WORK(Way.PREPARE, 2, "Have the user save the work and sign out"),
    PULL_PLUG(Way.PREPARE, 2, "Switch it off, pull the plug and wait a minute"),
    STRAP(Way.PREPARE, 1, "Put the wrist strap on and clip it to the case"),
    IN_USE(Way.MEASURE, 2, "share of the memory in use"),
    VOLTS(Way.MEASURE, 5, "module voltage in the firmware", SAVE_WORK),
    WARMTH(Way.MEASURE, 3, "temperature of the modules at work"),
    ONE_PASS(Way.MEASURE, 5, "errors in one pass of the memory test, an hour and a half", SAVE_WORK),
    LONG_TEST(Way.MEASURE, 8, "errors in six hours of the memory test", SAVE_WORK),
    STANDARD_RUN(Way.MEASURE, 10, "whether six hours at the standard speed show no error", SAVE_WORK),
    COLD_AND_WARM(
            Way.MEASURE, 20, "whether errors come warm and not cold, six hours each, a fan on it first", SAVE_WORK),
    GOES_ALONG(
            Way.MEASURE, 25, "modules changed over: do errors go along with the module?", SAVE_WORK, PULL_PLUG, STRAP),
    STAYS(Way.MEASURE, 25, "modules changed over: do errors stay with the slot?", SAVE_WORK, PULL_PLUG, STRAP),
    RESEAT(Way.MEND, 8, "Clean the contacts and seat both modules anew", SAVE_WORK, PULL_PLUG, STRAP),
    REPLACE_A(Way.MEND, 15, "Replace module A", SAVE_WORK, PULL_PLUG, STRAP),
    REPLACE_B(Way.MEND, 15, "Replace module B", SAVE_WORK, PULL_PLUG, STRAP),
    OTHER_SLOTS(Way.MEND, 12, "Use the board's other pair of slots", SAVE_WORK, PULL_PLUG, STRAP),
    STANDARD_SPEED(Way.MEND, 5, "Set memory to its standard profile", SAVE_WORK),
    FREE_AIR(Way.MEND, 15, "Free the air to the modules", SAVE_WORK, PULL_PLUG, STRAP),
    REPAIR_FILES(Way.MEND, 10, "Repair the file system after the stops"),
    TRY_WORK(Way.TRY, 5, "A day of the usual work: does it stop?", SAVE_WORK);

    private final Particulars particulars;

    MemoryAct(Way way, double minutes, String label, MemoryAct... prudent) {
        particulars = new Particulars(way, minutes, label, List.of(prudent));
    }

    @Override
    public Particulars particulars() {
        return particulars;
    }

    @Override
    public boolean lasting() {
        return this == STRAP;
    }
}
