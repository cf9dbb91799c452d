package org.benchtrail.core.practice.job;

import java.util.List;

/** What can be done with a UPS and what hangs on it. */
public enum PowerAct implements DeviceAct {
    ASK_SWITCHES(Way.ASK, 1, "whether it happens when something large switches on"),
    ASK_DARK(Way.ASK, 1, "whether a device went dark at once when the mains failed"),
    ASK_OFF(Way.ASK, 1, "whether the devices go off while they run"),
    ASK_WORK(Way.ASK, 1, "whether there was work on the wiring before it began"),
    LOOK_FED(Way.LOOK, 1, "whether the devices are fed by a UPS"),
    LOOK_LAMP(Way.LOOK, 2, "whether the UPS reports its battery or self-test bad"),
    LOOK_AGE(Way.LOOK, 2, "at the battery's date: older than four years?"),
    LOOK_LOG(Way.LOOK, 3, "into the UPS's log: does it go over to battery several times a day?"),
    LOOK_LEADS(Way.LOOK, 4, "where each lead goes: is a device that must stay up on an outlet without battery?"),
    LOOK_PRINTER(Way.LOOK, 2, "whether a printer or heater is on the battery outlets"),
    LOOK_SPARE(Way.LOOK, 3, "for loads on battery that may go dark"),
    LOOK_STRIP(Way.LOOK, 2, "whether the UPS is fed through a strip"),
    LOOK_PROGRAM(Way.LOOK, 4, "whether the log names the UPS program for a shutdown"),
    LOOK_PLUG(Way.LOOK, 2, "at outlet and plug for browning, warmth or smell"),
    PANEL(Way.MEASURE, 2, "load on the UPS's panel"),
    OUTLET(Way.MEASURE, 3, "outlet voltage while the heater runs"),
    SAVE_WORK(Way.PREPARE, 2, "Have everybody save and sign out"),
    SET_SHUTDOWN(Way.PREPARE, 5, "Set the server's orderly shutdown and try it"),
    INSULATE(Way.PREPARE, 3, "Rings off, insulated tool, poles capped, leads in the maker's order"),
    SELF_TEST(Way.MEASURE, 2, "runtime by the UPS's self-test", SAVE_WORK),
    TIMED_RUN(Way.MEASURE, 6, "runtime by running on battery down to 30 %", SAVE_WORK, SET_SHUTDOWN),
    OPEN_CASE(Way.LOOK, 4, "into the server, its case open"),
    PULL_MAINS(Way.MEND, 1, "Pull the mains plug to see what stays on", SAVE_WORK),
    NEW_BATTERY(Way.MEND, 25, "Put in a new set of batteries and charge it", INSULATE),
    MOVE_SERVER(Way.MEND, 10, "Move the server to a battery outlet", SAVE_WORK),
    MOVE_PRINTER(Way.MEND, 10, "Move the printer to the outlet without battery"),
    PRINTER_ON_BATTERY(Way.MEND, 5, "Move the printer to a battery outlet", SAVE_WORK),
    SET_TRANSFER(Way.MEND, 4, "Set the voltage at which it goes over to battery to its default"),
    OTHER_CIRCUIT(Way.MEND, 20, "Put the heater on another circuit"),
    OPEN_WIRING(Way.MEND, 15, "Open the outlet and look at its wiring"),
    TRY_OUTAGE(Way.TRY, 5, "The whole run again: heater on, and the outage as reported", SAVE_WORK, SET_SHUTDOWN);

    private final Particulars particulars;

    PowerAct(Way way, double minutes, String label, PowerAct... prudent) {
        particulars = new Particulars(way, minutes, label, List.of(prudent));
    }

    @Override
    public Particulars particulars() {
        return particulars;
    }
}
