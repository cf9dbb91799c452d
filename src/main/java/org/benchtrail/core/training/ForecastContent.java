package org.benchtrail.core.training;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.Commitment;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.method.desk.ForecastKind;

/**
 * What somebody expects to be the cause of a ticket, committed before it can be seen.
 *
 * @param percents of causes by id, whole per cent, 0 to 100; a cause that is not named is part of something else
 * @param other per cent of something else
 * @param nextTest id of the finding that they would look at next; empty if they name none
 */
public record ForecastContent(
        String ticket, int round, ForecastKind kind, Map<String, Integer> percents, int other, String nextTest) {
    /** Under which it is committed. */
    public static final String NAME = "forecast.content";

    private static final int WHOLE = 100;
    private static final int MOST = 12;
    private static final String ID = "[A-Za-z0-9._:/-]{1,80}";
    /** In what is committed, the name of something else. */
    public static final String OTHER = "other";

    public ForecastContent {
        percents = new TreeMap<>(percents);
        int sum = other + percents.values().stream().mapToInt(Integer::intValue).sum();
        boolean inRange = other >= 0 && percents.values().stream().allMatch(p -> p >= 0 && p <= WHOLE);
        new Invalid.Collector()
                .require(inRange, "causes", "A chance is a whole per cent from 0 to 100.")
                .require(
                        sum == WHOLE,
                        "other",
                        "The chances add to " + sum + " %: with something else they add to 100 %.")
                .require(
                        !percents.isEmpty() && percents.size() <= MOST,
                        "causes",
                        "Name 1 to " + MOST + " causes, each with its chance.")
                .require(
                        percents.keySet().stream().allMatch(id -> id.matches(ID) && !id.equals(OTHER)),
                        "causes",
                        "Choose causes of the list.")
                .require(nextTest.isEmpty() || nextTest.matches(ID), "nextTest", "Choose a test of the list.")
                .throwIfAny();
    }

    /** The same bytes for the same forecast (RFC 8785); it names its ticket and round, so that it cannot be moved to others. */
    public String canonical() {
        String causes = all().entrySet().stream()
                .map(e -> "\"" + e.getKey() + "\":\"" + chance(e.getValue()) + "\"")
                .collect(Collectors.joining(","));
        return "{\"causes\":{" + causes + "},\"kind\":\"" + kind.id() + "\",\"nextTest\":\"" + nextTest
                + "\",\"round\":" + round + ",\"ticket\":\"" + ticket + "\",\"v\":1}";
    }

    /** The per cent of every cause that is named, and of something else. */
    public Map<String, Integer> all() {
        Map<String, Integer> all = new TreeMap<>(percents);
        all.put(OTHER, other);
        return all;
    }

    /** @param salt 32 random bytes of this forecast alone */
    public Hash commitment(byte[] salt) {
        return Commitment.of(salt, NAME, canonical());
    }

    static String chance(int percent) {
        return percent / WHOLE + "." + percent % WHOLE / 10 + percent % 10;
    }
}
