package org.benchtrail.core.method;

import java.util.Collection;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.diagnosis.Danger;
import org.benchtrail.core.diagnosis.Finding;

/**
 * A warning that is acknowledged before the act it guards. The wording is ours and general; the maker's instructions, the
 * site's rules and local code come first, as every text says at its end.
 */
public enum Caution {
    LIVE(
            "Live measurement",
            "Only by one who is trained for it, with a second person near who can cut the power. Meter and leads rated for the place (measurement category of IEC 61010) and whole; one hand, no jewellery, and no wrist strap. Switch off and measure dead if that answers the question."),
    MAINS(
            "Mains voltage",
            "Switch off and pull every cord before you reach inside: a device may have several. The outlets of a UPS stay live when the UPS is unplugged. No wrist strap near live parts."),
    BATTERY(
            "Batteries",
            "Batteries hold energy when everything is off, and a string of them adds up to a voltage that kills. Insulated tools, no jewellery, terminals covered one by one, eye protection for lead-acid, and the room ventilated; old ones go to battery collection."),
    SWELLING(
            "Swollen cell",
            "Do not charge, press, puncture or bend it. Leave it unplugged on a surface that cannot burn, away from people, and follow the site's rule for damaged lithium cells."),
    CAPACITOR(
            "Charged parts",
            "Power supplies and displays keep a dangerous charge after unplugging: do not open the supply itself, replace it whole."),
    HEAT(
            "Hot parts",
            "Coolers, fusers and drives burn skin: switch off and wait for the cooling time that the maker gives. Do not try by hand whether it is cool."),
    MOVING_PARTS(
            "Moving parts",
            "Fans, rollers, gears and cutters catch fingers, hair and lanyards: switch off and wait until all stands still before you reach in."),
    LIFTING(
            "Heavy load",
            "Lift with a second person or a lift table. Take batteries out first; take drives out only when each is marked with its bay."),
    HEIGHT(
            "Work at height",
            "A ladder that is whole, stands firm and is held by somebody, never a chair; nobody below; look for mains wiring above a ceiling before you reach in."),
    LASER(
            "Laser or fibre",
            "Do not look into an open fibre end, a transmitter port or a scanner unit, even when it looks dark. Bits of fibre go into a closed box, not on the floor."),
    STATIC(
            "Static charge",
            "With the device switched off and unplugged, wear a wrist strap tied to the bare chassis and hold boards by their edges. Never wear it near live parts. Only a vacuum made safe for electronics."),
    DATA_LOSS(
            "Data at risk",
            "This can destroy data, or leave a device that no longer starts. Go on only with a backup that was taken or verified today and that somebody has read back, and with power that will not be cut.");

    private static final String LAST_WORD = "The maker's instructions, site rules and local code come first; wiring and"
            + " earthing are a licensed electrician's work.";

    private final String title;
    private final String advice;

    Caution(String title, String advice) {
        this.title = title;
        this.advice = advice;
    }

    /**
     * The cautions that an act raises by what it touches, whoever words it: the table {@code cautions.tsv} beside this class
     * names the words of each. Common practice, no source.
     */
    public static Set<Caution> raisedBy(String act) {
        return CautionWords.raisedBy(act);
    }

    /** The cautions that an expectation or a result raises: by what it says was done, not by what it merely names. */
    public static Set<Caution> toldBy(String told) {
        return CautionWords.toldBy(told);
    }

    /** The cautions against what the catalogue calls a danger. */
    public static Set<Caution> against(Danger danger) {
        return switch (danger) {
            case LIVE_MEASUREMENT -> Set.of(LIVE);
            case MAINS -> Set.of(MAINS);
            case OPENING -> Set.of(MAINS, STATIC);
            case BATTERY -> Set.of(BATTERY);
            case CHARGE -> Set.of(MAINS, CAPACITOR);
            case HEAT -> Set.of(HEAT);
            case MOVING_PARTS -> Set.of(MOVING_PARTS);
            case LIFTING -> Set.of(LIFTING);
            case HEIGHT -> Set.of(HEIGHT);
            case LASER -> Set.of(LASER);
            case DRIVE_MOVED -> Set.of(STATIC, DATA_LOSS);
            case DATA -> Set.of(DATA_LOSS);
        };
    }

    /** As {@link #against(Danger)}, of several. */
    public static Set<Caution> against(Collection<Danger> dangers) {
        return EnumCopies.set(
                Caution.class,
                dangers.stream().flatMap(d -> against(d).stream()).collect(Collectors.toSet()));
    }

    /** The cautions that the catalogue names for making a finding. */
    public static Set<Caution> against(Finding finding) {
        Set<Caution> named = finding.making() == null
                ? Set.of()
                : finding.making().cautions().stream().map(Caution::valueOf).collect(Collectors.toSet());
        return EnumCopies.union(Caution.class, named, against(finding.dangers()));
    }

    /** What every act raises that opens, stops or changes something on a ticket of that category. */
    public static Set<Caution> usualFor(Category category) {
        return switch (category) {
            case POWER -> Set.of(MAINS);
            case BATTERY -> Set.of(BATTERY);
            case STORAGE, ARRAY -> Set.of(DATA_LOSS);
            case HEAT, MEMORY, DISPLAY, WIRED, WIRELESS, PRINTING, BOOT, VOICE, USB, OTHER -> Set.of();
        };
    }

    /** Whether an act opens, stops or changes something, by its words. */
    public static boolean touches(String act) {
        return CautionWords.touches(act);
    }

    public String title() {
        return title;
    }

    /** What to mind, without {@link #lastWord}. */
    public String advice() {
        return advice;
    }

    /** What every caution ends with; said once below several. */
    public static String lastWord() {
        return LAST_WORD;
    }

    public String text() {
        return advice + " " + LAST_WORD;
    }
}
