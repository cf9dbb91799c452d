package org.benchtrail.core.bench.voice;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.voice.Jitter.Input;
import org.benchtrail.core.bench.voice.Jitter.Packet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JitterTest {
    private static Result of(double allowed, Packet... packets) {
        return Jitter.calculate(new Input(8000, List.of(packets), allowed));
    }

    @Test
    void evenArrivals_haveNone() {
        assertEquals(
                0,
                FigureOf.value(of(30, new Packet(0, 50), new Packet(160, 70), new Packet(320, 90)), "Jitter"),
                1e-12);
    }

    @Test
    void oneLatePacket_countsASixteenth() {
        assertEquals(0.5, FigureOf.value(of(30, new Packet(0, 50), new Packet(160, 78)), "Jitter"), 1e-12);
    }

    @Test
    void timestampThatRunsOver_isTakenTheShortWay() {
        Result result = of(30, new Packet(0x1p32 - 160, 50), new Packet(0, 70), new Packet(160, 90));
        assertEquals(0, FigureOf.value(result, "Jitter"), 1e-9);
    }

    @Test
    void packetsThatOvertake_areTakenInTheirOrderOfArrival() {
        Result result = of(30, new Packet(0, 50), new Packet(320, 91), new Packet(160, 92));
        assertEquals(21, FigureOf.value(result, "Largest change of the transit time"), 1e-9);
    }

    /** The published algorithm in whole timestamp units, transit by transit (RFC 3550 appendix A.8), as a second way. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void agreesWithTheTransitFormOfTheStandard(long seed) {
        Random random = new Random(seed);
        List<Packet> packets = new ArrayList<>();
        int arrivalTicks = 4000;
        int previousTransit = 0;
        double jitter = 0;
        for (int i = 0; i < 400; i++) {
            int timestamp = 160 * i;
            arrivalTicks = Math.max(arrivalTicks, timestamp + 4000 + random.nextInt(300));
            packets.add(new Packet(timestamp, arrivalTicks / 8.0));
            int transit = arrivalTicks - timestamp;
            if (i > 0) {
                jitter += (Math.abs(transit - previousTransit) - jitter) / 16.0;
            }
            previousTransit = transit;
        }
        Result result = Jitter.calculate(new Input(8000, packets, 30));
        check("RFC 3550 appendix A.8", jitter / 8, FigureOf.value(result, "Jitter"), 1e-9);
        assertTrue(result.working().size() < 40, "a long call does not fill pages");
    }

    @Test
    void limit_isInclusive() {
        assertEquals(
                Level.UNDECIDED,
                of(0.5, new Packet(0, 50), new Packet(160, 78)).judgement().level());
        assertEquals(
                Level.BAD,
                of(0.499, new Packet(0, 50), new Packet(160, 78)).judgement().level());
    }

    @Test
    void arrivalsOutOfOrder_andBrokenTicks_areRefused() {
        Invalid refusal = assertThrows(Invalid.class, () -> of(30, new Packet(0, 50), new Packet(160.5, 49)));
        assertEquals(
                List.of("packets[1].timestamp", "packets[1].arrival"),
                refusal.problems().stream().map(Invalid.Problem::field).toList());
    }
}
