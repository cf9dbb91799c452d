package org.benchtrail.core.practice.job;

import java.util.List;

/** What can be done with a workstation whose drive makes it slow. */
public enum DriveAct implements DeviceAct {
    ASK_SLOW(Way.ASK, 1, "whether the whole system is slow"),
    ASK_MOVED(Way.ASK, 1, "whether it was moved or knocked before it began"),
    ASK_COMES(Way.ASK, 1, "whether it comes and goes"),
    LOOK_BUSY(Way.LOOK, 2, "whether the drive is busy all the time while the rest waits"),
    LISTEN(Way.LOOK, 1, "and listen for clicking and for spinning up over and over"),
    LOOK_CABLE(Way.LOOK, 5, "at the data cable and the plug of the supply"),
    LOOK_LOG(Way.LOOK, 4, "into the log for time-outs of the drive"),
    LOOK_LIST(Way.LOOK, 3, "whether the firmware lists the drive"),
    LOOK_SELF(Way.LOOK, 1, "whether the drive itself expects to fail"),
    LOOK_SNAPSHOTS(Way.LOOK, 4, "whether restore points take the space"),
    COUNTERS(Way.MEASURE, 3, "reallocated and pending sectors"),
    CRC_GROWTH(Way.MEASURE, 6, "whether the error counter of the link rises over a copy of 10 GB"),
    FREE_SPACE(Way.MEASURE, 1, "free space"),
    ACTIVE_TIME(Way.MEASURE, 3, "active time of the drive"),
    LATENCY(Way.MEASURE, 5, "mean read latency"),
    TEMPERATURE(Way.MEASURE, 2, "temperature of the drive"),
    PLUG_RUNNING(Way.MEASURE, 8, "+12 V at the drive's plug, running"),
    PLUG_SPIN_UP(Way.MEASURE, 10, "+12 V at the drive's plug, spinning up"),
    READ_BACK(Way.PREPARE, 6, "Read a file back from the backup"),
    COPY_DATA(Way.PREPARE, 8, "Copy the user's data to another drive"),
    SHUT_DOWN(Way.PREPARE, 2, "Have the user save the work, and shut it down in order"),
    RESEAT(Way.MEND, 4, "Seat both plugs of the drive anew", SHUT_DOWN),
    OTHER_CABLE(Way.MEND, 10, "Put in another data cable", SHUT_DOWN),
    OTHER_PORT(Way.MEND, 40, "Put in another controller and use its port", SHUT_DOWN),
    OTHER_PLUG(Way.MEND, 6, "Use another plug of the supply", SHUT_DOWN),
    MAKE_ROOM(Way.MEND, 15, "Make room on the volume"),
    STOP_TASK(Way.MEND, 5, "Stop the task in the background"),
    COOL(Way.MEND, 10, "Give the drive air", SHUT_DOWN),
    WHOLE_READ(Way.MEND, 5, "Read the whole surface", COPY_DATA),
    REPAIR_FILES(Way.MEND, 5, "Repair the file system", COPY_DATA),
    WRITE_TEST(Way.MEND, 5, "Write test over the whole surface", COPY_DATA),
    REPLACE(Way.MEND, 90, "Replace the drive and restore", COPY_DATA, SHUT_DOWN),
    TRY_WORK(Way.TRY, 3, "The usual work for half an hour: is it still slow?");

    private final Particulars particulars;

    DriveAct(Way way, double minutes, String label, DriveAct... prudent) {
        particulars = new Particulars(way, minutes, label, List.of(prudent));
    }

    @Override
    public Particulars particulars() {
        return particulars;
    }

    @Override
    public boolean lasting() {
        return this != SHUT_DOWN;
    }
}
