package org.benchtrail.core.diagnosis;

import java.util.Map;

/**
 * What stands behind the figures of a category that were learned. A figure that is not named here is the catalogue's own.
 *
 * @param causes behind the prior of each cause, {@link Model#UNLISTED} among them
 * @param tables behind what each cause makes of a finding, by cause and finding
 * @param backgrounds behind the background of each finding
 */
public record Support(
        Map<String, Backing> causes, Map<String, Map<String, Backing>> tables, Map<String, Backing> backgrounds) {
    /** Nothing was learned. */
    public static final Support PRACTICE = new Support(Map.of(), Map.of(), Map.of());

    private static final Backing PRACTICE_ALONE = new Backing(1, 0);

    public Support {
        causes = Map.copyOf(causes);
        tables = Map.copyOf(tables);
        backgrounds = Map.copyOf(backgrounds);
    }

    public Backing prior(String cause) {
        return causes.getOrDefault(cause, PRACTICE_ALONE);
    }

    public Backing table(String cause, String finding) {
        return tables.getOrDefault(cause, Map.of()).getOrDefault(finding, PRACTICE_ALONE);
    }

    public Backing background(String finding) {
        return backgrounds.getOrDefault(finding, PRACTICE_ALONE);
    }
}
