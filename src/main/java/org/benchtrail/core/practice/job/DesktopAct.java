package org.benchtrail.core.practice.job;

import java.util.List;

/** What can be done with a desktop that may overheat. */
public enum DesktopAct implements DeviceAct {
    ASK_SETTINGS(Way.ASK, 1, "whether settings were changed before it began"),
    ASK_PLACE(Way.ASK, 1, "whether it was moved before it began"),
    ASK_NOISE(Way.ASK, 1, "whether its fans run loud"),
    ASK_OFF(Way.ASK, 2, "whether it switches itself off while it works"),
    LOOK_PLACE(Way.LOOK, 1, "where it stands, and whether cool air gets to it"),
    LOOK_DUST(Way.LOOK, 5, "for a dust mat on fins and filter, cover off"),
    LOOK_FAN(Way.LOOK, 4, "at the processor's fan while it is hot"),
    LOOK_SINK(Way.LOOK, 5, "whether the heat sink can be rocked, power off"),
    LOOK_CABLE(Way.LOOK, 3, "whether a cable touches the fan"),
    LISTEN(Way.LOOK, 2, "and listen for grinding or ticking"),
    LOOK_LOG(Way.LOOK, 3, "into the log for heat"),
    LOOK_FIRMWARE(Way.LOOK, 4, "at the clock that the firmware sets"),
    SAVE_WORK(Way.PREPARE, 2, "Have the user save the work and sign out"),
    NOTE_SETTINGS(Way.PREPARE, 3, "Write the firmware's settings down"),
    LET_COOL(Way.PREPARE, 2, "Switch it off and let it cool for a quarter of an hour"),
    HAND_WARM(Way.PREPARE, 2, "Bring the sink to hand-warm, then switch it off"),
    DIE_IDLE(Way.MEASURE, 3, "processor temperature at rest"),
    FROM_COLD(Way.MEASURE, 4, "what the sensor shows from cold, beside a thermometer"),
    DIE_SOON(Way.MEASURE, 4, "processor temperature after two minutes of full load", SAVE_WORK),
    DIE_LOAD(Way.MEASURE, 6, "processor temperature after twelve minutes of full load", SAVE_WORK),
    FAN_SPEED(Way.MEASURE, 3, "fan speed while it is hot", SAVE_WORK),
    CLOCK_SHARE(Way.MEASURE, 5, "clock under load against the base clock", SAVE_WORK),
    CLOCK_RATED(Way.MEASURE, 4, "clock under load against the rated clock", SAVE_WORK),
    INLET(Way.MEASURE, 2, "air at the intake under load", SAVE_WORK),
    SINK(Way.MEASURE, 5, "sink base under load, with a contact probe", SAVE_WORK),
    COVER_OPEN(Way.MEASURE, 8, "whether it gets cooler by 10 K with the cover off", SAVE_WORK),
    JUMP(Way.MEASURE, 6, "whether the temperature jumps as the load begins"),
    RESISTANCE(Way.MEASURE, 10, "kelvin per watt from chip to air against the rated value", SAVE_WORK),
    USE_AT_REST(Way.MEASURE, 3, "processor use at rest"),
    CLEAN(Way.MEND, 20, "Clean fins and filter, fan held still", LET_COOL),
    BLOW(Way.MEND, 12, "Blow it out with compressed air", LET_COOL),
    REPLACE_FAN(Way.MEND, 20, "Replace the fan", LET_COOL),
    PASTE(Way.MEND, 30, "New paste, sink mounted anew", HAND_WARM),
    FAN_CURVE(Way.MEND, 6, "Set the fan's curve to automatic"),
    DEFAULT_CLOCK(Way.MEND, 8, "Set the clock to its default"),
    FIRMWARE_DEFAULTS(Way.MEND, 5, "Load the firmware's defaults", NOTE_SETTINGS),
    CLEAR_VENTS(Way.MEND, 10, "Clear the vents and move it into cool air"),
    SENSOR_TABLE(Way.MEND, 12, "Load the maker's firmware with the right table of the sensor", NOTE_SETTINGS),
    TRY_LOAD(Way.TRY, 3, "Full load for twenty minutes: is it still too hot?", SAVE_WORK);

    private final Particulars particulars;

    DesktopAct(Way way, double minutes, String label, DesktopAct... prudent) {
        particulars = new Particulars(way, minutes, label, List.of(prudent));
    }

    @Override
    public Particulars particulars() {
        return particulars;
    }

    @Override
    public boolean lasting() {
        return this != LET_COOL && this != HAND_WARM;
    }
}
