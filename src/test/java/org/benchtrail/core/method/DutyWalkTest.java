package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.HandedOver;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.junit.jupiter.api.Test;

/**
 * The duty to have a trainee's work signed stays with the work: along hand-overs, promotions and their opposite, reopenings,
 * corrections and addenda by chance, no ticket on which a trainee has worked is closed without a mentor's signature that stands for
 * it. What is looked for is read off the trail, by another way than the rule's.
 */
@BesideOthers
class DutyWalkTest {
    private static final int SEEDS = 300;
    private static final int ACTS = 220;
    private static final List<String> WORKERS = List.of("ines", "ole", "tom", "marek");
    private static final Set<Class<?>> SIGNED_FOR =
            Set.of(CauseNamed.class, SummaryWritten.class, KnowledgeLinked.class, EffortRecorded.class);

    private final Map<String, Set<Role>> roles = new HashMap<>();
    private int closings;
    private int ofTrainees;
    private int atOthers;
    private int countersigned;

    private Actor now(Actor person) {
        return new Actor(person.account(), person.name(), roles.getOrDefault(person.account(), person.roles()));
    }

    private Actor now(String account) {
        return now(Sheets.person(account));
    }

    @Test
    void aTraineesWork_isNeverClosed_withoutAMentorsSignatureThatStandsForIt() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            roles.clear();
            TicketFixture desk = seed % 2 == 0 ? Sheets.plain() : Sheets.demanding();
            Gen gen = new Gen(seed);
            for (int i = 0; i < ACTS && desk.sheet().course().standing() != Standing.CANCELLED; i++) {
                step(gen, desk, seed);
            }
        }
        System.out.printf(
                "duty walks: %d closings, %d after a trainee's work, %d of them by who was no trainee then, %d addenda of trainees countersigned%n",
                closings, ofTrainees, atOthers, countersigned);
        assertTrue(closings > 200 && ofTrainees > 50 && atOthers > 20 && countersigned > 5, "too few to prove much");
    }

    private void step(Gen gen, TicketFixture desk, long seed) {
        if (gen.chance(6)) {
            String who = gen.one(WORKERS);
            roles.put(
                    who,
                    gen.one(List.of(
                            Set.of(Role.TRAINEE), Set.of(Role.TECHNICIAN), Set.of(Role.TECHNICIAN, Role.MENTOR))));
        }
        try {
            Gen.Act act = act(gen, desk);
            Decision decision = desk.as(now(act.actor())).does(act.fact());
            if (decision instanceof Decision.Allowed) {
                judge(
                        act.fact(),
                        now(act.actor()),
                        desk,
                        "seed " + seed + ", entry " + desk.sheet().entries());
            }
        } catch (Invalid malformed) {
            assertTrue(malformed.problems().size() > 0);
        }
    }

    private Gen.Act act(Gen gen, TicketFixture desk) {
        JobSheet sheet = desk.sheet();
        Actor worker = desk.assigneeActor();
        if (!gen.chance(24)) {
            return sheet.course().standing() == Standing.CLOSED && gen.chance(85)
                    ? added(gen, desk)
                    : gen.helpful(desk);
        }
        return switch (gen.below(6)) {
            case 0, 1 -> {
                Actor to = now(gen.one(WORKERS));
                yield new Gen.Act(Sheets.SUE, new HandedOver(to.account(), to.roles(), ""));
            }
            case 2 -> new Gen.Act(worker, new Corrected(gen.one(sheet.facts()).entry(), "Misheard", null));
            case 3 -> new Gen.Act(worker, corrected(gen, sheet));
            case 4 -> new Gen.Act(now(gen.one(WORKERS)), new Signed(Signatory.MENTOR));
            default -> new Gen.Act(worker, rechecked(sheet));
        };
    }

    private Gen.Act added(Gen gen, TicketFixture desk) {
        List<StandingFact<Addendum>> addenda = desk.sheet().all(Addendum.class);
        return addenda.isEmpty() || gen.chance(40)
                ? new Gen.Act(Sheets.person(gen.one(WORKERS)), new Addendum(Addendum.About.REMARK, "One screw more"))
                : new Gen.Act(
                        gen.chance(50) ? Sheets.SUE : Sheets.person(gen.one(WORKERS)),
                        new AddendumCountersigned(gen.one(addenda).entry(), ""));
    }

    private static Corrected corrected(Gen gen, JobSheet sheet) {
        StandingFact<?> old = gen.one(sheet.facts());
        Fact fact = old.fact() instanceof ReadingRecorded ? Sheets.temperature("70", "room") : old.fact();
        return new Corrected(old.entry(), "Better so", fact);
    }

    private static Fact rechecked(JobSheet sheet) {
        return new SymptomRechecked(
                sheet.latest(SymptomRecorded.class).map(StandingFact::entry).orElse(1), true, "Looked again");
    }

    // ---- read off the trail

    private void judge(Fact fact, Actor by, TicketFixture desk, String where) {
        List<Entry> trail = desk.trail();
        if (fact instanceof Closed) {
            closings++;
            if (isTraineesWork(trail.subList(0, trail.size() - 1))) { // to close what others did and signed is none
                ofTrainees++;
                atOthers += by.is(Role.TRAINEE) ? 0 : 1;
                assertTrue(
                        isSigned(trail),
                        where + ": closed with nobody's signature for what a trainee did\n" + told(trail));
            }
        } else if (fact instanceof AddendumCountersigned signed
                && trail.get(signed.addendum() - 1).stamp().roles().contains(Role.TRAINEE)) {
            countersigned++;
            assertEquals(true, by.is(Role.MENTOR), where + ": a trainee's addendum, countersigned by " + by);
        }
    }

    private static String told(List<Entry> trail) {
        return trail.stream()
                .map(e -> e.stamp().entry() + " " + e.stamp().by() + " "
                        + e.stamp().roles() + " " + e.fact())
                .collect(java.util.stream.Collectors.joining("\n"));
    }

    private static boolean isWork(Entry entry) {
        Fact fact = entry.fact() instanceof Corrected c && c.replacement() != null ? c.replacement() : entry.fact();
        return fact.takesPart() == Part.WORK;
    }

    private static boolean isTraineesWork(List<Entry> trail) {
        return trail.stream().anyMatch(e -> isWork(e) && e.stamp().roles().contains(Role.TRAINEE));
    }

    private static boolean isSigned(List<Entry> trail) {
        Set<String> worked = new HashSet<>();
        trail.stream()
                .filter(DutyWalkTest::isWork)
                .forEach(e -> worked.add(e.stamp().by()));
        Set<Integer> struck = new HashSet<>();
        trail.stream()
                .filter(e -> e.fact() instanceof Corrected c && c.replacement() == null)
                .forEach(e -> struck.add(((Corrected) e.fact()).entry()));
        int since = 0;
        for (Entry e : trail) {
            Fact fact = e.fact() instanceof Corrected c && c.replacement() != null ? c.replacement() : e.fact();
            boolean trainees = isWork(e)
                    && !(fact instanceof Signed)
                    && !(fact instanceof Closed)
                    && e.stamp().roles().contains(Role.TRAINEE);
            if (trainees
                    || SIGNED_FOR.contains(fact.getClass())
                    || fact instanceof SentBack
                    || fact instanceof Reopened) {
                since = e.stamp().entry();
            }
        }
        int after = since;
        return trail.stream()
                .anyMatch(e -> e.fact() instanceof Signed s
                        && s.signatory() == Signatory.MENTOR
                        && e.stamp().entry() > after
                        && e.stamp().roles().contains(Role.MENTOR)
                        && !worked.contains(e.stamp().by()));
    }
}
