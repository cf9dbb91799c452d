package org.benchtrail.core.measure;

/** What kind of quantity a unit measures. Quantities of different dimensions are never compared or converted. */
public enum Dimension {
    VOLTAGE("voltage"),
    CURRENT("current"),
    RESISTANCE("resistance"),
    POWER("power"),
    /** Kept apart from {@link #POWER}: a load has watts and volt-amperes, and each rating binds on its own. */
    APPARENT_POWER("apparent power"),
    ENERGY("energy"),
    CHARGE("electric charge"),
    FREQUENCY("frequency"),
    /** Kept apart from {@link #FREQUENCY}: a fan's speed is never a clock's. */
    ROTATION("speed of rotation"),
    TEMPERATURE("temperature"),
    THERMAL_RESISTANCE("thermal resistance"),
    TIME("time"),
    DATA("amount of data"),
    DATA_RATE("data rate"),
    LENGTH("length"),
    PRESSURE("pressure"),
    RATIO("ratio"),
    /** A level difference in decibels; not converted, because the reference decides what it means. */
    LEVEL("level"),
    /** Absolute power level in decibels above one milliwatt. */
    POWER_LEVEL("power level"),
    COUNT("count"),
    /** How often something is counted. */
    COUNT_RATE("count in a time");

    private final String words;

    Dimension(String words) {
        this.words = words;
    }

    /** Its name in a sentence, such as "apparent power". */
    public String words() {
        return words;
    }
}
