package org.benchtrail.core.practice.job;

import java.util.List;

/** What can be done with a desk computer that went off. */
public enum SupplyAct implements DeviceAct {
    ASK_RAN(Way.ASK, 1, "whether it goes off while it runs"),
    ASK_HARD(Way.ASK, 2, "whether it goes off while it works hard"),
    ASK_COLD(Way.ASK, 1, "whether it starts badly when cold"),
    ASK_CHANGED(Way.ASK, 1, "whether hardware was changed before it began"),
    ASK_STORM(Way.ASK, 1, "whether there was a storm or a surge just before"),
    LOOK_DARK(Way.LOOK, 1, "whether it stays dark and silent when it is switched on"),
    LOOK_STANDBY(Way.LOOK, 3, "at the standby light of the board, through the vent"),
    LOOK_STRIP(Way.LOOK, 2, "whether the strip is switched off or the breaker is off"),
    LOOK_REAR(Way.LOOK, 1, "at the rear switch of the supply"),
    LOOK_LEAD(Way.LOOK, 2, "at the mains lead, its plug pulled"),
    LOOK_BROWN(Way.LOOK, 2, "at outlet and plug for browning, warmth or smell"),
    LOOK_OTHERS(Way.LOOK, 1, "whether other devices on the same outlet are dark"),
    PULL_PLUG(Way.PREPARE, 2, "Switch it off, pull the plug and wait a minute"),
    STRAP(Way.PREPARE, 1, "Put the wrist strap on and clip it to the case"),
    SAVE_WORK(Way.PREPARE, 2, "Have the user save the work and close all programs"),
    LOOK_INSIDE(Way.LOOK, 3, "and smell through the grille of the supply, which stays shut", PULL_PLUG),
    OUTLET(Way.MEASURE, 3, "outlet voltage while it runs as hard as it can", SAVE_WORK),
    RAIL_IDLE(Way.MEASURE, 6, "+12 V at a plug, at rest", SAVE_WORK),
    RAIL_LOAD(Way.MEASURE, 8, "+12 V at a plug, at full load", SAVE_WORK),
    LABEL(Way.MEASURE, 6, "whether the label is below what the parts draw"),
    ALONE(Way.MEASURE, 8, "whether the supply alone fails on the tester", PULL_PLUG, STRAP),
    HOLD_UP(Way.MEASURE, 15, "how long the supply holds +12 V on a test load without mains", PULL_PLUG, STRAP),
    OTHER_CORD(Way.MEASURE, 3, "whether it comes up on another outlet with another cord"),
    FEWEST(Way.MEASURE, 20, "whether it starts with the fewest parts, the board on card", PULL_PLUG, STRAP),
    NEW_SUPPLY(Way.MEND, 30, "Put in another supply", PULL_PLUG, STRAP),
    LIFT_BOARD(Way.MEND, 25, "Take the board out and put its standoffs right", PULL_PLUG, STRAP),
    PRESS_PLUGS(Way.MEND, 5, "Press the power plugs of the board home", PULL_PLUG, STRAP),
    OTHER_OUTLET(Way.MEND, 10, "Use another outlet, close this one off and report it"),
    OPEN_SUPPLY(Way.MEND, 20, "Open the supply and change its capacitor"),
    TRY_WORK(Way.TRY, 5, "An hour of full load, with a dip of the mains: does it go off?", SAVE_WORK);

    private final Particulars particulars;

    SupplyAct(Way way, double minutes, String label, SupplyAct... prudent) {
        particulars = new Particulars(way, minutes, label, List.of(prudent));
    }

    @Override
    public Particulars particulars() {
        return particulars;
    }

    @Override
    public boolean lasting() {
        return this != PULL_PLUG;
    }
}
