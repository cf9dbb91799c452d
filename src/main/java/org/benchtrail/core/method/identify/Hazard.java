package org.benchtrail.core.method.identify;

/**
 * What makes a place unsafe to work at. What to do is ours and general; the maker's instructions, the site's rules and local
 * code come first.
 */
public enum Hazard {
    SMELL(
            "burnt smell",
            Clearer.ASSIGNEE,
            "Switch off at a safe place, such as the breaker, and do not switch on again. Air the room, and watch for smoke: if anything burns, leave, warn everybody and call the emergency number."),
    SMOKE(
            "smoke",
            Clearer.SECOND_PERSON,
            "Leave, warn everybody and call the emergency number if anything burns. Cut the power at a safe place on the way out, never at the device. Do not breathe the smoke, do not open the case."),
    HEAT(
            "heat where none belongs",
            Clearer.ASSIGNEE,
            "Do not touch it. Switch off at a safe place, move away what can burn, air the room and let it cool for the maker's time; watch for smoke."),
    SWELLING(
            "swelling",
            Clearer.SECOND_PERSON,
            "Keep away and keep others away. Do not charge, press, move or open it; unplug the charger at the wall. Air the room. If it hisses, smokes or burns, leave and call the emergency number."),
    LIQUID(
            "liquid inside or near",
            Clearer.SECOND_PERSON,
            "Do not touch device, cords or the wet floor. Cut the power at a safe, dry place, such as the breaker; warn others. Liquid from a battery burns skin and eyes: air the room, keep away."),
    MAINS_LEAD(
            "damaged mains lead",
            Clearer.ASSIGNEE,
            "Do not touch the lead or the device. Cut the power at the breaker, then unplug; warn others and mark it so that nobody uses it."),
    EXPOSED_WIRING(
            "exposed wiring",
            Clearer.SECOND_PERSON,
            "Keep an arm's length and more away, and keep others away. Cut the power at the breaker, lock it or put up a notice; a licensed electrician does the rest."),
    SHOCK(
            "shock or tingling",
            Clearer.SECOND_PERSON,
            "Do not touch the device or anybody who is still in contact with it. Cut the power at a safe place first; whoever had a shock is seen by a doctor, call the emergency number. Warn others."),
    ARCING(
            "arcing or crackling",
            Clearer.SECOND_PERSON,
            "Keep away and look away. Cut the power at a safe place, such as the breaker, not at the device. Warn others; if anything burns, leave and call the emergency number."),
    SHARP(
            "broken glass or sharp edges",
            Clearer.ASSIGNEE,
            "Hands off without gloves that resist cuts, and eye protection. Keep others away, switch off and unplug at the wall, and let the pieces be swept, not picked up."),
    HEIGHT(
            "work at height",
            Clearer.ASSIGNEE,
            "Stay down. Go up only with a ladder or platform that is checked and held, somebody near, nobody below, and the mains above the ceiling known.");

    /** Who may say that it is gone. */
    private enum Clearer {
        ASSIGNEE,
        SECOND_PERSON
    }

    private final String words;
    private final Clearer clearer;
    private final String now;

    Hazard(String words, Clearer clearer, String now) {
        this.words = words;
        this.clearer = clearer;
        this.now = now;
    }

    public String words() {
        return words;
    }

    /** Whether only a second person clears it, who has not worked on the ticket. */
    public boolean needsSecondPerson() {
        return clearer == Clearer.SECOND_PERSON;
    }

    /** What to do now, before anything else. */
    public String whatToDo() {
        return now;
    }

    /** Whether it is asked since a later list: screenings recorded before it was do not answer it. */
    boolean askedLater() {
        return compareTo(EXPOSED_WIRING) > 0;
    }
}
