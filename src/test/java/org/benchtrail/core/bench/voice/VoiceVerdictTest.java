package org.benchtrail.core.bench.voice;

import static org.benchtrail.core.bench.FigureOf.assertVerdict;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each verdict at, under and over the boundary at which it changes. */
class VoiceVerdictTest {
    /** Packets 20 ms apart, each coming {@code late} ms later or earlier than the one before, in turn. */
    private static Result jitter(int packets, double late, double allowed) {
        List<Jitter.Packet> all = new ArrayList<>();
        for (int i = 0; i < packets; i++) {
            all.add(new Jitter.Packet(160.0 * i, 20.0 * i + (i % 2) * late));
        }
        return Jitter.calculate(new Jitter.Input(8000, all, allowed));
    }

    /** (15/16)^47 is the first power below five per cent: 47 changes, 48 packets. */
    @ParameterizedTest
    @CsvSource({"6, UNDECIDED", "47, UNDECIDED", "48, GOOD", "200, GOOD"})
    void jitter_ofTooFewPacketsIsNotCalledWithin(int packets, Level level) {
        Result result = jitter(packets, 10, 12);
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    @Test
    void jitter_aboveWhatIsAllowedIsToldAtOnce() {
        assertVerdict(Level.BAD, "above what is allowed", jitter(4, 15, 1));
    }

    private static Result voice(double jitter, Double buffer) {
        return Voice.calculate(new Voice.Input(Voice.Codec.G711, 20, jitter, buffer, 0, 1));
    }

    @Test
    void voice_withoutABufferAsLongAsTheJitterIsNotCalledGood() {
        assertEquals(Level.UNDECIDED, voice(30, 0.0).judgement().level());
        assertEquals(Level.UNDECIDED, voice(30, 29.9).judgement().level());
        assertEquals(Level.GOOD, voice(30, 30.0).judgement().level());
        assertEquals(Level.GOOD, voice(30, null).judgement().level());
        assertEquals(Level.GOOD, voice(0, 0.0).judgement().level());
        assertTrue(
                voice(30, 0.0).judgement().words().startsWith("at best "),
                voice(30, 0.0).judgement().words());
    }

    @ParameterizedTest
    @CsvSource({
        "130, GOOD, best",
        "131, CAREFUL, 'best, but late'",
        "380, CAREFUL, 'low, but late'",
        "381, BAD, 'low, but far too late'"
    })
    void voice_saysThatItComesLate(double delay, Level level, String words) {
        assertVerdict(level, words, Voice.calculate(new Voice.Input(Voice.Codec.G711, delay, 0, null, 0, 1)));
    }
}
