package org.benchtrail.core.training;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.Commitment;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.learning.ForecastScores;
import org.benchtrail.core.method.desk.ForecastKind;

/**
 * One chance of one thing, committed before it can be seen: that a check comes as expected, that a finding has a value, that the
 * trouble is gone after an action.
 *
 * @param kind none of the causes
 * @param about entry of the check or action, or id of the finding
 * @param value that the finding will have; empty of a check and an action
 * @param percent one of 1, 5, 10, 15 ... 95, 99
 */
public record ChanceContent(String ticket, int round, ForecastKind kind, String about, String value, int percent) {
    private static final String ID = "[A-Za-z0-9._:/ -]{1,80}";

    public ChanceContent {
        new Invalid.Collector()
                .require(!kind.isOfCauses(), "forecast", "Say which forecast it is.")
                .require(ForecastScores.isOffered(percent), "percent", ForecastScores.OFFERED)
                .require(about.matches(ID), "about", "Choose what it is about.")
                .require((kind == ForecastKind.FINDING) == value.matches(ID), "about", "Choose what will be found.")
                .throwIfAny();
    }

    /** The same bytes for the same forecast (RFC 8785); it names its ticket and round, so that it cannot be moved to others. */
    public String canonical() {
        return "{\"about\":\"" + about + "\",\"chance\":\"" + ForecastContent.chance(percent) + "\",\"kind\":\""
                + kind.id() + "\",\"round\":" + round + ",\"ticket\":\"" + ticket + "\",\"v\":1,\"value\":\"" + value
                + "\"}";
    }

    /** @param salt 32 random bytes of this forecast alone */
    public Hash commitment(byte[] salt) {
        return Commitment.of(salt, ForecastContent.NAME, canonical());
    }
}
