package org.benchtrail.core.method;

import static org.benchtrail.core.method.Sheets.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Refused;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The invariants of the method along acts by chance. Number 6, two people at once, is the server's; here only that an entry
 * with a stale number does not land.
 */
class RandomWalkTest {
    private static final int SEEDS = 320;
    private static final int ACTS = 150;

    private static final Set<String> UNASKED = new TreeSet<>();
    private static final Set<String> ASKED = new TreeSet<>();

    private static int walks;
    private static int reachedClosure;
    private static int closures;
    private static int allowed;
    private static int refused;
    private static int invalid;
    private static int mostRounds;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, SEEDS);
    }

    @BeforeAll
    static void reset() {
        walks = reachedClosure = closures = allowed = refused = invalid = mostRounds = 0;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void everyAct_keepsTheInvariants(long seed) {
        Gen gen = new Gen(seed);
        TicketFixture desk = gen.chance(30) ? demanding() : plain();
        int before = closures;
        int act = 0;
        try {
            for (; act < ACTS && desk.sheet().course().standing() != Standing.CANCELLED; act++) {
                step(gen, desk);
            }
        } catch (AssertionError | RuntimeException broken) {
            throw new AssertionError("seed " + seed + ", act " + act + ": " + broken.getMessage(), broken);
        }
        walks++;
        reachedClosure += closures > before ? 1 : 0;
        mostRounds = Math.max(mostRounds, desk.sheet().round());
    }

    private static void step(Gen gen, TicketFixture desk) {
        if (gen.chance(30)) {
            desk.passes(Duration.ofMinutes(gen.below(600)));
        }
        JobSheet before = desk.sheet();
        try {
            boolean ended = before.course().standing() == Standing.CLOSED;
            Gen.Act act = gen.chance(ended ? 20 : 72) ? gen.helpful(desk) : gen.any(desk);
            Decision decision = desk.as(act.actor()).does(act.fact());
            assertStep(before, act.fact(), decision, desk);
        } catch (Invalid malformed) {
            assertFalse(malformed.problems().isEmpty());
            assertEquals(before, desk.sheet(), "what is malformed leaves no trace");
            invalid++;
        }
    }

    private static void assertStep(JobSheet before, Fact fact, Decision decision, TicketFixture desk) {
        JobSheet after = desk.sheet();
        assertEquals(before.entries() + 1, after.entries(), "3: entries never grow fewer");
        assertEquals(after.entries(), desk.trail().size());
        if (decision instanceof Decision.Refused no) {
            refused++;
            assertRefused(before, after, no);
        } else {
            allowed++;
            closures += fact instanceof Closed ? 1 : 0;
        }
        TrailOracle.judge(desk.trail(), desk.policy()); // 1, 4, 5
        assertTrue(after.round() >= before.round(), "7: rounds only grow");
        assertUnaskedIsNotLacking(new Situation(after, desk.policy(), desk.now(), Move.CLOSE, ""));
        List<Integer> out = after.ruledOut().stream().map(StandingFact::entry).toList();
        assertTrue(
                out.containsAll(
                        before.ruledOut().stream().map(StandingFact::entry).toList()),
                "7: what was ruled out stays so");
        assertEquals(after, JobSheet.replay(desk.trail()), "3: replayed");
        Entry stale =
                new Entry(new Stamp(before.entries() + 1, desk.now(), "ole", OLE.roles()), temperature("20", "room"));
        assertThrows(IllegalArgumentException.class, () -> after.with(stale), "6: stale");
    }

    private static void assertUnaskedIsNotLacking(Situation situation) {
        for (Requirement requirement : Requirements.all()) {
            String unasked = requirement.unasked(situation);
            String lacking = requirement.row().gap().apply(situation);
            assertTrue(unasked.isEmpty() || lacking.isEmpty(), () -> unasked + " And yet: " + lacking);
            (unasked.isEmpty() ? ASKED : UNASKED).add(requirement.code());
        }
    }

    private static void assertRefused(JobSheet before, JobSheet after, Decision.Refused no) {
        assertEquals(before.course(), after.course(), "2: nothing moves");
        assertEquals(before.facts(), after.facts().subList(0, before.facts().size()), "2: nothing changes");
        assertEquals(before.facts().size() + 1, after.facts().size(), "2: one entry");
        assertTrue(after.facts().get(before.facts().size()).fact() instanceof Refused);
        for (Missing missing : no.missing()) {
            assertFalse(missing.code().isBlank() || missing.anchor().isBlank());
            assertFalse(missing.sentence().isBlank());
        }
    }

    @AfterAll
    static void enoughCameToAnEnd() {
        System.out.printf(
                "random walks: %d seeds, %d acts allowed, %d refused, %d invalid; %d seeds reached closure, %d closures,"
                        + " up to %d rounds%n",
                walks, allowed, refused, invalid, reachedClosure, closures, mostRounds);
        if (walks == SEEDS) {
            assertTrue(reachedClosure >= SEEDS / 4, reachedClosure + " walks reached closure: too few to prove much");
            assertTrue(refused > 1_000 && invalid > 100, "too few refusals to prove much");
            assertEveryRequirementIsJudgedASecondTime();
            assertEquals(AskedOfSome.codes(), UNASKED, "no walk came to a ticket of which one of these asks nothing");
            TreeSet<String> never = new TreeSet<>(UNASKED);
            never.removeAll(ASKED);
            assertEquals(Set.of(), never, "no walk came to a ticket of which these ask something");
        }
    }

    private static void assertEveryRequirementIsJudgedASecondTime() {
        Set<String> judged = new TreeSet<>(TrailOracle.ASKED);
        judged.addAll(TrailOracle.OTHERWISE);
        assertEquals(
                Requirements.all().stream().map(Requirement::code).collect(Collectors.toCollection(TreeSet::new)),
                judged,
                "say in TrailOracle how each is met");
    }
}
