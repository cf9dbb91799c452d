package org.benchtrail.core.method;

import java.util.Locale;

/** How much it weighs where a requirement was not satisfied. */
public enum DefectClass {
    MINOR("The record is poorer than it should be"),
    MAJOR("The cause or the cure is not shown"),
    CRITICAL("Somebody or somebody's data could have been harmed");

    private final String meaning;

    DefectClass(String meaning) {
        this.meaning = meaning;
    }

    public String meaning() {
        return meaning;
    }

    public String words() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether it makes its ticket one with a defect. */
    public boolean counts() {
        return this != MINOR;
    }

    /** Whether a reviewer may take it where that is the usual one: raised as far as they like, lowered by one at most. */
    public boolean insteadOf(DefectClass usual) {
        return ordinal() >= usual.ordinal() - 1;
    }
}
