package org.benchtrail.core.method.identify;

public enum Hazard {
    SMELL("burnt smell"),
    SMOKE("smoke"),
    HEAT("unusual heat"),
    SWELLING("swelling"),
    LIQUID("liquid inside or near"),
    MAINS_LEAD("damaged mains lead"),
    EXPOSED_WIRING("exposed wiring");

    private final String words;

    Hazard(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
