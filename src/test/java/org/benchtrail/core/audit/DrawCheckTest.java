package org.benchtrail.core.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.audit.AuditAct.Entry;
import org.benchtrail.core.audit.AuditAct.Item;
import org.benchtrail.core.audit.AuditAct.LotFrozen;
import org.benchtrail.core.audit.AuditAct.PlanStated;
import org.benchtrail.core.audit.AuditAct.SampleDrawn;
import org.benchtrail.core.audit.AuditAct.SeedDrawn;
import org.benchtrail.core.audit.DrawCheck.Fault;
import org.benchtrail.core.audit.DrawCheck.Part;
import org.benchtrail.core.audit.DrawCheck.Signed;
import org.benchtrail.core.audit.DrawCheck.Told;
import org.benchtrail.core.method.TicketNumber;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each part of a draw altered where it is kept, in its record, and in both: the check names that part and no other. */
@BesideOthers
class DrawCheckTest {
    private static final Instant START = Instant.parse("2026-11-01T00:00:00Z");
    private static final String HEAD = "log\n9\nx\n\n\u2014 log eA==\n";
    private static final Signed HOLDS = new Signed(true, true, true);
    private static final Signed FORGED = new Signed(false, true, true);

    private static final List<AuditAct> DRAWN = drawn(5);

    private static List<AuditAct> drawn(int rest) {
        PlanStated plan = new PlanStated(plan(rest));
        List<Item> items = IntStream.range(0, 20)
                .mapToObj(i -> new Item(new TicketNumber(51000 + i).toString(), 40, "00", Stratum.REST))
                .toList();
        SeedDrawn seed = new SeedDrawn(
                9,
                HEAD,
                "",
                Draw.of(HEAD.getBytes(StandardCharsets.UTF_8), plan.plan().getBytes(StandardCharsets.UTF_8))
                        .seed()
                        .hex());
        List<AuditAct> acts = new ArrayList<>(List.of(plan, new LotFrozen(items, 3, START), seed));
        acts.add(new SampleDrawn(lot(acts).sample()));
        return acts;
    }

    private static String plan(int rest) {
        Map<Stratum, Take> takes = new EnumMap<>(Stratum.class);
        for (Stratum stratum : Stratum.values()) {
            takes.put(stratum, Take.usual(stratum, rest));
        }
        return new AuditPlan("2026-11", START, START.plusSeconds(86400), takes, 0, AuditPlan.Otherwise.REVIEW_ALL, "")
                .text();
    }

    private static AuditLot lot(List<AuditAct> acts) {
        List<Entry> entries = new ArrayList<>();
        acts.forEach(act -> entries.add(new Entry(entries.size() + 1L, START, "sue", act)));
        return AuditLot.of("2026-11", entries);
    }

    private static Map<Long, Told> told(List<AuditAct> acts, long unlike) {
        Map<Long, Told> told = new HashMap<>();
        for (long place = 1; place <= acts.size(); place++) {
            told.put(place, new Told(acts.get((int) place - 1), place != unlike));
        }
        return told;
    }

    /** What somebody could write there instead, who can write anything. */
    private static AuditAct altered(Part part, AuditAct act) {
        return switch (part) {
            case PLAN -> new PlanStated(plan(4));
            case LIST -> {
                LotFrozen frozen = (LotFrozen) act;
                List<Item> items = new ArrayList<>(frozen.items());
                items.set(7, new Item(new TicketNumber(60000).toString(), 40, "00", Stratum.REST));
                yield new LotFrozen(items, frozen.open(), frozen.oldest());
            }
            case HEAD -> {
                SeedDrawn seed = (SeedDrawn) act;
                yield new SeedDrawn(10, seed.head().replace("9", "10"), "", seed.seed());
            }
            case SEED -> {
                SeedDrawn seed = (SeedDrawn) act;
                yield new SeedDrawn(seed.size(), seed.head(), "", "ab".repeat(32));
            }
            case ORDER -> {
                List<String> order = new ArrayList<>(((SampleDrawn) act).drawn().get(Stratum.REST));
                Collections.swap(order, 0, 1);
                yield new SampleDrawn(Map.of(Stratum.REST, order));
            }
        };
    }

    private static int at(Part part) {
        return switch (part) {
            case PLAN -> 0;
            case LIST -> 1;
            case HEAD, SEED -> 2;
            case ORDER -> 3;
        };
    }

    private static List<AuditAct> with(Part part) {
        List<AuditAct> acts = new ArrayList<>(DRAWN);
        UnaryOperator<AuditAct> other = act -> altered(part, act);
        acts.set(at(part), other.apply(acts.get(at(part))));
        return acts;
    }

    private static List<String> sentences(List<Fault> faults) {
        return faults.stream().map(Fault::sentence).toList();
    }

    @Test
    void whatNobodyAltered_agrees() {
        assertEquals(List.of(), DrawCheck.of(lot(DRAWN), told(DRAWN, 0), HOLDS));
    }

    @ParameterizedTest
    @EnumSource(Part.class)
    void onePart_whereItIsKept(Part part) {
        Signed head = part == Part.HEAD ? FORGED : HOLDS;
        assertEquals(
                List.of("The " + words(part) + " was altered: what is kept is not what the log sealed."),
                sentences(DrawCheck.of(lot(with(part)), told(DRAWN, 0), head)));
    }

    @ParameterizedTest
    @EnumSource(Part.class)
    void onePart_inItsRecord(Part part) {
        assertEquals(
                List.of("The record of the " + words(part) + " was altered: it is not what the log sealed."),
                sentences(DrawCheck.of(lot(DRAWN), told(with(part), at(part) + 1), HOLDS)));
    }

    @ParameterizedTest
    @EnumSource(Part.class)
    void onePart_inBoth(Part part) {
        Signed head = part == Part.HEAD ? FORGED : HOLDS;
        assertEquals(
                List.of("The " + words(part)
                        + " was altered: neither what is kept nor its record is what the log sealed."),
                sentences(DrawCheck.of(lot(with(part)), told(with(part), at(part) + 1), head)));
    }

    private static String words(Part part) {
        return part == Part.ORDER ? "drawn order" : part.name().toLowerCase(java.util.Locale.ROOT);
    }

    /** A record that is gone or cannot be read tells nothing. */
    @Test
    void noRecord() {
        Map<Long, Told> without = told(DRAWN, 0);
        without.remove(1L);
        without.put(2L, new Told(null, false));
        assertEquals(
                List.of(
                        "The record of the plan was altered: it is not what the log sealed.",
                        "The record of the list was altered: it is not what the log sealed."),
                sentences(DrawCheck.of(lot(DRAWN), without, HOLDS)));
    }

    /** What a server that was tampered with drew and had sealed: sealed as it is, and still no draw. */
    @Test
    void whatWasSealedWrong_isSeenByDrawingAgain() {
        assertEquals(
                List.of("The drawn order was altered: plan, list and seed give another."),
                sentences(DrawCheck.of(lot(with(Part.ORDER)), told(with(Part.ORDER), 0), HOLDS)));
        assertEquals(
                List.of(
                        "The seed was altered: head and plan give another.",
                        "The drawn order was altered: plan, list and seed give another."),
                sentences(DrawCheck.of(lot(with(Part.SEED)), told(with(Part.SEED), 0), HOLDS)));
        assertEquals(
                List.of(
                        "The head was altered: the log did not sign it.",
                        "The seed was altered: head and plan give another."),
                sentences(DrawCheck.of(lot(with(Part.HEAD)), told(with(Part.HEAD), 0), FORGED)));
    }

    @Test
    void aHead_hasItsSignatures_andComesFirst() {
        assertEquals(
                List.of("The head was altered: the witness that the plan names did not sign it."),
                sentences(DrawCheck.of(lot(DRAWN), told(DRAWN, 0), new Signed(true, false, true))));
        assertEquals(
                List.of("The head was altered: it is not the first that came after the freeze."),
                sentences(DrawCheck.of(lot(DRAWN), told(DRAWN, 0), new Signed(true, true, false))));
        List<AuditAct> other = new ArrayList<>(DRAWN);
        other.set(2, new SeedDrawn(9, HEAD, "w1", ((SeedDrawn) DRAWN.get(2)).seed()));
        assertEquals(
                List.of("The head was altered: the plan names another witness."),
                sentences(DrawCheck.of(lot(other), told(other, 0), HOLDS)));
    }

    /** Every act that makes a draw is one of the parts, and no other is. */
    @Test
    void whatMakesADraw() {
        assertEquals(
                List.of("lot-frozen", "plan-stated", "rest-drawn", "sample-drawn", "seed-drawn"),
                Stream.concat(
                                DRAWN.stream(),
                                Stream.of(new AuditAct.RestDrawn(Map.of()), new AuditAct.TalkRecorded("x", List.of())))
                        .filter(DrawCheck::isOfDraw)
                        .map(act -> AuditAct.name(act.getClass()))
                        .sorted()
                        .toList());
    }
}
