package org.benchtrail.core.method;

import java.math.BigDecimal;
import java.time.Duration;

/**
 * What a site decides for itself; passed in, so that a decision depends on nothing else.
 *
 * @param approvalCostLimit a plan that costs more, in the site's currency, is approved by somebody else
 * @param dataAnswerMaxAge how old the answer about data may be when an action touches storage
 * @param soakTime how long an intermittent fault runs clean before it is believed gone
 * @param reopenWindow how long after closing anyone who works tickets may reopen
 * @param guardBand how far from its limit a reading must lie before it is called within or outside, in standard uncertainties
 */
public record Policy(
        BigDecimal approvalCostLimit,
        Duration dataAnswerMaxAge,
        Duration soakTime,
        Duration reopenWindow,
        BigDecimal guardBand) {

    /** Common practice, no source. */
    public static Policy usual() {
        return new Policy(
                BigDecimal.valueOf(250),
                Duration.ofHours(24),
                Duration.ofHours(48),
                Duration.ofDays(14),
                BigDecimal.valueOf(2));
    }
}
