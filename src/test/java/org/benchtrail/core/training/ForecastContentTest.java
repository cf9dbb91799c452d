package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.method.desk.ForecastKind;
import org.junit.jupiter.api.Test;

class ForecastContentTest {
    private static final String SOURCE = "commitment recomputed with Python's hashlib";

    private static final ForecastContent EXAMPLE =
            forecast("40718-6", 1, ForecastKind.CAUSES, Map.of("HEA-03", 30, "HEA-01", 50, "HEA-05", 15), 5, "h3");

    private static ForecastContent forecast(
            String ticket, int round, ForecastKind kind, Map<String, Integer> percents, int other, String next) {
        return new ForecastContent(ticket, round, kind, percents, other, next);
    }

    private static byte[] salt() {
        byte[] salt = new byte[32];
        for (int i = 0; i < salt.length; i++) {
            salt[i] = (byte) i;
        }
        return salt;
    }

    @Test
    void commitment_isTheCheckValue() {
        Published.check(SOURCE, 142, EXAMPLE.canonical().getBytes(StandardCharsets.UTF_8).length);
        Published.check(
                SOURCE,
                "8a135b04c60420f8c61dca5368c891d08c180cb24591ffc3f0ba59fd5b8603b5",
                EXAMPLE.commitment(salt()).toString());
    }

    /** Moved to another ticket, round or kind, or altered by one per cent, it opens no longer. */
    @Test
    void commitment_bindsAllOfIt() {
        String bound = EXAMPLE.commitment(salt()).toString();
        Map<String, Integer> altered = new TreeMap<>(EXAMPLE.percents());
        altered.put("HEA-01", 49);
        List.of(
                        forecast("40719-4", 1, ForecastKind.CAUSES, EXAMPLE.percents(), 5, "h3"),
                        forecast("40718-6", 2, ForecastKind.CAUSES, EXAMPLE.percents(), 5, "h3"),
                        forecast("40718-6", 1, ForecastKind.CAUSES_EARLY, EXAMPLE.percents(), 5, "h3"),
                        forecast("40718-6", 1, ForecastKind.CAUSES, EXAMPLE.percents(), 5, "h4"),
                        forecast("40718-6", 1, ForecastKind.CAUSES, altered, 6, "h3"))
                .forEach(
                        other -> assertNotEquals(bound, other.commitment(salt()).toString()));
        assertNotEquals(bound, EXAMPLE.commitment(new byte[32]).toString());
    }

    private static String refused(Map<String, Integer> causes, int other, String next) {
        return assertThrows(Invalid.class, () -> forecast("40718-6", 1, ForecastKind.CAUSES, causes, other, next))
                .problems()
                .get(0)
                .field();
    }

    @Test
    void chances_addTo100_eachFrom0To100() {
        assertEquals("other", refused(Map.of("a", 60), 39, ""));
        assertEquals("other", refused(Map.of("a", 60), 41, ""));
        assertEquals("causes", refused(Map.of("a", 101), -1, ""));
        assertEquals("causes", refused(Map.of("a", -1), 101, ""));
        assertEquals("causes", refused(Map.of(), 100, ""));
        assertEquals("causes", refused(Map.of("other", 50), 50, ""));
        assertEquals("causes", refused(Map.of("a\"b", 50), 50, ""));
        assertEquals("nextTest", refused(Map.of("a", 50), 50, "h\"3"));
        assertEquals(
                "{\"causes\":{\"a\":\"0.00\",\"b\":\"1.00\",\"other\":\"0.00\"},\"kind\":\"causes-early\",\"nextTest\":\"\","
                        + "\"round\":3,\"ticket\":\"1\",\"v\":1}",
                forecast("1", 3, ForecastKind.CAUSES_EARLY, Map.of("b", 100, "a", 0), 0, "")
                        .canonical());
    }
}
