package org.benchtrail.core.practice.job;

import java.util.List;

/** What can be done with a file server whose array complains. */
public enum ArrayAct implements DeviceAct {
    ASK_HARDWARE(Way.ASK, 1, "whether hardware was changed before it began"),
    ASK_POWER(Way.ASK, 1, "whether there was a power cut or work in the room"),
    LOOK_STATE(Way.LOOK, 1, "at the controller's state: is the array degraded?"),
    LOOK_MEMBERS(Way.LOOK, 1, "at the state of each member"),
    LOOK_CACHE(Way.LOOK, 1, "at the state of the write cache's protection"),
    LOOK_REBUILD(Way.LOOK, 1, "whether a rebuild is running"),
    LOOK_EVENTS(Way.LOOK, 2, "whether two or more drives dropped in the same minute"),
    LOOK_FOREIGN(Way.LOOK, 3, "whether members of another set-up are shown; import and clear nothing"),
    LOOK_HEALTH(Way.LOOK, 3, "at the own health of the member that is marked"),
    LOOK_TASKS(Way.LOOK, 2, "whether a background check runs"),
    LOOK_SHELF(Way.LOOK, 2, "whether the shelf reports a power module or fan"),
    LOOK_LOG(Way.LOOK, 3, "into the log: did the same bay fail before, with another drive?"),
    LATENCY(Way.MEASURE, 4, "write latency of the volume"),
    MEDIA_ERRORS(Way.MEASURE, 4, "media errors on the other members"),
    READ_BACK(Way.PREPARE, 6, "Read a file back from the backup"),
    COPY_DATA(Way.PREPARE, 8, "Copy the users' data to another server while it still reads"),
    LOCATE(Way.PREPARE, 2, "Light the lamp of the bay and compare the serial number on the drive"),
    SHUT_DOWN(Way.PREPARE, 3, "Have everybody save, and shut the server down in order"),
    TEST_DRIVE(Way.MEASURE, 10, "whether the drive that is marked tests well on a test computer", LOCATE),
    REPLACE(Way.MEND, 30, "Replace the drive that is marked and watch the rebuild", COPY_DATA, LOCATE),
    OTHER_BAY(Way.MEND, 40, "Move the drive that is marked to another bay and watch the rebuild", COPY_DATA, LOCATE),
    CACHE_BATTERY(Way.MEND, 30, "Replace the battery of the write cache", SHUT_DOWN),
    EASE_CHECK(Way.MEND, 3, "Let the background check run by night"),
    PULL_TO_SEE(Way.MEND, 3, "Pull another member to see which lamp goes out"),
    NEW_VOLUME(Way.MEND, 5, "Say yes to the offer to set up a new volume"),
    TRY_WORK(Way.TRY, 5, "An hour of the usual load, and the controller's state after it: is it still so?");

    private final Particulars particulars;

    ArrayAct(Way way, double minutes, String label, ArrayAct... prudent) {
        particulars = new Particulars(way, minutes, label, List.of(prudent));
    }

    @Override
    public Particulars particulars() {
        return particulars;
    }

    @Override
    public boolean lasting() {
        return this != LOCATE && this != SHUT_DOWN;
    }
}
