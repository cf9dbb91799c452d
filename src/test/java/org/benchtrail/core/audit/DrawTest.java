package org.benchtrail.core.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.Published;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.statistics.LotBounds;
import org.benchtrail.core.statistics.LotBounds.Seen;
import org.junit.jupiter.api.Test;

/** The draw against values recomputed with a hash command, and what it finds of planted faults. */
@BesideOthers
class DrawTest {
    private static final String HASHED = "SHA-256 of the head, the plan and the numbers, recomputed";
    private static final String PLANTED = "planted faults in 1,000 draws, recomputed";
    private static final BigDecimal CONFIDENCE = new BigDecimal("0.95");
    private static final int DRAWS = 1000;

    private static final byte[] HEAD = utf8(
            "log.shop.example/trail\n5\nwffwsCf3bFpyMniiwtq1eBDj5NUhuviGUJNbvkmOs48=\n\n"
                    + "— log.shop.example/trail x0W5tmXDO3utWkzhKT+jQlNafHk7KdLh+Bzof0biHLnfelgBkNi3JhAZGaJcT3tSa0Ka93A3U4pLOh+HvfwyAzTtrwo=\n"
                    + "— witness.example/w1 BNLYMwAAAABpVbkA6WAdIPnL+fFFNXkNQpTqP6o7kj95nuQoy8fndLZ3rivRmpPCnHT+7IZKru7J/L059XckHV6tQX3Dq0rrtdUuDw==\n");
    private static final byte[] PLAN = utf8("audit-plan/1\nlot 2026-01\nitems 400\nrest-sample 59\n");
    private static final List<String> LOT = IntStream.rangeClosed(40718, 41117)
            .mapToObj(serial -> new TicketNumber(serial).toString())
            .toList();

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void seedAndRanks() {
        Published.check(
                HASHED,
                "4a64ff96c70815bb84009b962c20500977e9d775b9c5b8c49ccb167f3f67b3d4",
                Hash.sha256(HEAD).hex());
        Draw draw = Draw.of(HEAD, PLAN);
        Published.check(
                HASHED,
                "5303c296ca345d9805f54f21b10fc4ab3de848f20d1a526bda2c02d8a66525c7",
                draw.seed().hex());
        List<String> order = draw.order(LOT);
        Published.check(
                HASHED,
                List.of(
                        "40886-3", "40879-1", "41098-7", "40923-7", "41084-0", "40995-6", "40941-1", "41073-7",
                        "41016-3", "40718-6"),
                order.subList(0, 10));
        Published.check(HASHED, "40916-5", order.get(58));
        Published.check(
                HASHED,
                "007d0dceccd5344887d5f14c4b73f2f62dd9f1ea4a1f9c41b4998574ea103d65",
                draw.rank("40886-3").hex());
        Published.check(
                HASHED,
                "064cb192e6e1239454d7c606e43d1d598348b8ff78d8bb9616395880e03af561",
                draw.rank("40718-6").hex());
    }

    /** With their check digits, as the document names them. */
    @Test
    void numbersOfTheLots() {
        Published.check(HASHED, List.of("40718-6", "41117-6"), List.of(LOT.get(0), LOT.get(399)));
        Published.check(
                PLANTED, List.of("40718-6", "40738-9", "40758-1"), List.of(LOT.get(0), LOT.get(20), LOT.get(40)));
        assertEquals(Set.of("40718-6", "40738-9", "40758-1"), everyTwentieth(LOT.subList(0, 60)));
        List<String> rest = LOT.subList(30, 400);
        Published.check(PLANTED, List.of("40748-5", "40768-8"), List.of(rest.get(0), rest.get(20)));
        assertEquals(Set.of("40748-5", "40768-8"), everyTwentieth(rest.subList(0, 40)));
    }

    @Test
    void oneByteOfHeadOrPlan_drawsAnotherSample() {
        Draw draw = Draw.of(HEAD, PLAN);
        byte[] otherHead = HEAD.clone();
        otherHead[otherHead.length - 3] ^= 1;
        assertNotEquals(draw.seed(), Draw.of(otherHead, PLAN).seed());
        assertNotEquals(
                draw.seed(),
                Draw.of(HEAD, utf8("audit-plan/1\nlot 2026-01\nitems 400\nrest-sample 58\n"))
                        .seed());
        assertNotEquals(draw.order(LOT).subList(0, 59), draw.secondOrder(LOT).subList(0, 59));
    }

    /** Twenty faulty tickets of 400, every twentieth from the first: how often a sample shows one, and how often bounds hold. */
    @Test
    void plantedFaults_areFoundAsOftenAsCalculated() {
        Set<String> faulty = everyTwentieth(LOT);
        assertEquals(20, faulty.size());
        int[] shown = new int[2];
        int[] oneSided = new int[2];
        int[] twoSided = new int[2];
        int[] sizes = {55, 59};
        for (int i = 0; i < DRAWS; i++) {
            List<String> order = order(i, LOT);
            for (int s = 0; s < sizes.length; s++) {
                Seen seen = new Seen(400, sizes[s], found(order, sizes[s], faulty));
                shown[s] += seen.found() > 0 ? 1 : 0;
                oneSided[s] += LotBounds.upperBound(seen, CONFIDENCE) >= 20 ? 1 : 0;
                twoSided[s] += covers(LotBounds.twoSided(seen, CONFIDENCE), 20) ? 1 : 0;
            }
        }
        Published.check(PLANTED, List.of(939, 953), List.of(shown[0], shown[1]));
        Published.check(PLANTED, List.of(939, 953), List.of(oneSided[0], oneSided[1]));
        Published.check(PLANTED, List.of(991, 985), List.of(twoSided[0], twoSided[1]));
    }

    /** The first thirty are all looked at and two of them are faulty; of the other 370 eighteen. */
    @Test
    void plantedFaults_withACensus() {
        List<String> rest = LOT.subList(30, 400);
        Set<String> eighteen = new HashSet<>(everyTwentieth(rest).stream()
                .sorted((a, b) ->
                        TicketNumber.parse(a).serial() - TicketNumber.parse(b).serial())
                .limit(18)
                .toList());
        int oneSided = 0;
        int twoSided = 0;
        for (int i = 0; i < DRAWS; i++) {
            Seen seen = new Seen(370, 59, found(order(i, rest), 59, eighteen));
            oneSided += 2 + LotBounds.upperBound(seen, CONFIDENCE) >= 20 ? 1 : 0;
            twoSided += covers(LotBounds.twoSided(seen, CONFIDENCE).plus(2), 20) ? 1 : 0;
        }
        Published.check(PLANTED, 987, twoSided);
        Published.check(PLANTED, 957, oneSided);
    }

    private static List<String> order(int draw, List<String> lot) {
        return new Draw(Hash.sha256(utf8("draw " + draw))).order(lot);
    }

    private static Set<String> everyTwentieth(List<String> lot) {
        List<String> faulty = new ArrayList<>();
        for (int i = 0; i < lot.size(); i += 20) {
            faulty.add(lot.get(i));
        }
        return new HashSet<>(faulty);
    }

    private static int found(List<String> order, int looked, Set<String> faulty) {
        return (int) order.subList(0, looked).stream().filter(faulty::contains).count();
    }

    private static boolean covers(LotBounds bounds, int actual) {
        return bounds.lower() <= actual && actual <= bounds.upper();
    }
}
