package org.benchtrail.core.diagnosis;

import org.benchtrail.core.Invalid;

/**
 * How fast a site's own cases outweigh the catalogue. The numbers are our choice.
 *
 * @param priorCount cases that the catalogue's weights are worth, in all
 * @param tableCount cases that each catalogue probability is worth
 * @param technicianShare most that one technician's cases may make up of all, prior included; in (0, 1], 1 for no cap
 * @param siteShare the same for one site
 * @param supervisorShare the same for all cases one supervisor accepted; wider, since a small site has one or two
 * @param halfLifeDays after which a case counts half
 */
public record LearningSettings(
        double priorCount,
        double tableCount,
        double technicianShare,
        double siteShare,
        double supervisorShare,
        double halfLifeDays) {
    public static final LearningSettings STANDARD = new LearningSettings(20, 10, 0.2, 0.2, 0.5, 365);

    /** @throws Invalid with every value outside its domain */
    public LearningSettings {
        new Invalid.Collector()
                .require(priorCount > 0, "priorCount", "give a count above 0")
                .require(tableCount > 0, "tableCount", "give a count above 0")
                .require(isShare(technicianShare), "technicianShare", "give a share above 0, at most 1")
                .require(isShare(siteShare), "siteShare", "give a share above 0, at most 1")
                .require(isShare(supervisorShare), "supervisorShare", "give a share above 0, at most 1")
                .require(halfLifeDays > 0, "halfLifeDays", "give days above 0")
                .throwIfAny();
    }

    private static boolean isShare(double x) {
        return x > 0 && x <= 1;
    }
}
