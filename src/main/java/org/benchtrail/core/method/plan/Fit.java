package org.benchtrail.core.method.plan;

public enum Fit {
    FITS("fits"),
    FITS_WITH_WARNING("fits with a warning"),
    DOES_NOT_FIT("does not fit");

    private final String words;

    Fit(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
