package org.benchtrail.core.method.plan;

public enum Settlement {
    CARRIED_OUT("carried out"),
    FAILED("failed"),
    NOT_NEEDED("not needed");

    private final String words;

    Settlement(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
