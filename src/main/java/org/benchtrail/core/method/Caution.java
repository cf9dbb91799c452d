package org.benchtrail.core.method;

import java.util.Set;

/**
 * A warning that is acknowledged before the act it guards. The wording is ours and general; the maker's instructions and
 * local code come first.
 */
public enum Caution {
    MAINS(
            "Mains voltage",
            "Switch off and pull the plug before you reach inside. Outlets, wiring and earthing are a licensed electrician's work under local code."),
    BATTERY(
            "Batteries",
            "Batteries hold energy when everything is off: no metal tools or jewellery across the terminals, eye protection for lead-acid, old ones go to battery collection. Follow the maker's instructions for the set."),
    SWELLING(
            "Swollen cell",
            "Do not charge, press, puncture or bend it. Leave it unplugged on a surface that cannot burn and follow the site's rule for damaged lithium cells."),
    CAPACITOR(
            "Charged parts",
            "Power supplies and displays keep a dangerous charge after unplugging: do not open the supply itself, replace it whole."),
    HEAT("Hot parts", "Coolers, fusers and drives burn skin: switch off and wait until you can hold a hand near it."),
    MOVING_PARTS(
            "Moving parts",
            "Fans, rollers and gears catch fingers, hair and lanyards: stop the machine before reaching in."),
    LIFTING("Heavy load", "Lift with a second person or a lift table; take batteries or drives out first."),
    LASER(
            "Laser or fibre",
            "Do not look into an open fibre end, a transmitter port or a scanner unit, even when it looks dark."),
    STATIC("Static charge", "Wear a wrist strap tied to the bare chassis; hold boards by their edges."),
    DATA_LOSS(
            "Data at risk",
            "This can destroy data. Go on only with a backup that was taken or verified today and that somebody has read back.");

    private final String title;
    private final String text;

    Caution(String title, String text) {
        this.title = title;
        this.text = text;
    }

    /**
     * The cautions that an act raises by what it touches, whoever words it: the table {@code cautions.tsv} beside this class
     * names the words of each. Common practice, no source.
     */
    public static Set<Caution> raisedBy(String act) {
        return CautionWords.raisedBy(act);
    }

    public String title() {
        return title;
    }

    public String text() {
        return text;
    }
}
