package org.benchtrail.core.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.audit.AuditAct.AddendumAsked;
import org.benchtrail.core.audit.AuditAct.AddendumClosed;
import org.benchtrail.core.audit.AuditAct.Entry;
import org.benchtrail.core.audit.AuditAct.Item;
import org.benchtrail.core.audit.AuditAct.LotConcluded;
import org.benchtrail.core.audit.AuditAct.LotFrozen;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditAct.PlanStated;
import org.benchtrail.core.audit.AuditAct.ReviewGiven;
import org.benchtrail.core.audit.AuditAct.ReviewSigned;
import org.benchtrail.core.audit.AuditAct.SampleDrawn;
import org.benchtrail.core.audit.AuditAct.SecondSigned;
import org.benchtrail.core.audit.AuditAct.SeedDrawn;
import org.benchtrail.core.audit.AuditAct.Settled;
import org.benchtrail.core.audit.AuditAct.TicketChosen;
import org.benchtrail.core.audit.AuditLot.State;
import org.benchtrail.core.audit.LotResult.Line;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.core.method.EndedTickets;
import org.benchtrail.core.method.TicketNumber;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lot through its course, and each way to steer it. */
class AuditLotTest {
    private static final String EXACT = "stratified bounds, full enumeration, recomputed";
    private static final Instant START = Instant.parse("2026-11-01T00:00:00Z");
    private static final Instant END = Instant.parse("2026-12-01T00:00:00Z");
    private static final String HEAD = "log\n9\nx\n\n\u2014 log eA==\n";
    private static final ReviewSheet SHEET =
            ReviewSheet.of(EndedTickets.closed().sheet(), EndedTickets.closed().policy());

    private final List<Entry> acts = new ArrayList<>();
    private Instant now = START;

    private AuditLot lot() {
        return AuditLot.of("2026-11", acts);
    }

    private void add(AuditAct act) {
        add(act, "sue");
    }

    private void add(AuditAct act, String by) {
        now = now.plusSeconds(30);
        acts.add(new Entry(acts.size() + 1, now, by, act));
    }

    private static AuditPlan plan(int rest) {
        Map<Stratum, Take> takes = new EnumMap<>(Stratum.class);
        for (Stratum stratum : Stratum.values()) {
            takes.put(stratum, Take.usual(stratum, rest));
        }
        return new AuditPlan("2026-11", START, END, takes, 0, AuditPlan.Otherwise.REVIEW_ALL, "");
    }

    private static List<Item> items(int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> new Item(
                        new TicketNumber(50000 + i).toString(), 40, "00", i < 2 ? Stratum.HAZARD : Stratum.REST))
                .toList();
    }

    private void draw(int count, int rest) {
        add(new PlanStated(plan(rest).text()));
        add(new LotFrozen(items(count), 3, START));
        add(new SeedDrawn(
                9, HEAD, "", Draw.of(utf8(HEAD), plan(rest).bytes()).seed().hex()));
        add(new SampleDrawn(lot().sample()));
    }

    private static byte[] utf8(String text) {
        return text.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }

    private void review(String ticket, int turn, String who, String faulty) {
        add(new ReviewGiven(ticket, turn, who, List.of(), ""));
        for (ReviewSheet.Row row : SHEET.rows()) {
            boolean fault = row.code().equals(faulty);
            add(new Marked(
                    ticket,
                    turn,
                    row.code(),
                    fault ? Mark.NOT_SATISFIED : Mark.SATISFIED,
                    fault ? row.question().usual() : null,
                    row.cited(),
                    fault ? "not so" : ""));
        }
        add(turn == 1 ? new ReviewSigned(ticket, 6) : new SecondSigned(ticket, 6));
    }

    private static void refused(Runnable act) {
        assertThrows(Invalid.class, act::run);
    }

    @Test
    void nothingIsDoneTwice() {
        refused(() -> AuditRules.plan(plan(5), END));
        add(new PlanStated(plan(5).text()));
        refused(() -> AuditRules.freeze(lot(), END.minusSeconds(1)));
        refused(() -> AuditRules.seed(lot()));
        AuditRules.freeze(lot(), END);
        add(new LotFrozen(items(20), 0, null));
        refused(() -> AuditRules.freeze(lot(), END));
        refused(() -> AuditRules.sample(lot()));
        AuditRules.seed(lot());
        add(new SeedDrawn(
                9, HEAD, "", Draw.of(utf8(HEAD), plan(5).bytes()).seed().hex()));
        refused(() -> AuditRules.seed(lot()));
        add(new SampleDrawn(lot().sample()));
        refused(() -> AuditRules.sample(lot()));
        assertEquals(State.DRAWN, lot().state());
        assertEquals(
                lot().seed().orElseThrow().seed(),
                lot().seedAgain().map(Hash::hex).orElseThrow());
        assertEquals(2, lot().drawn().get(Stratum.HAZARD).size());
        assertEquals(5, lot().drawn().get(Stratum.REST).size());
    }

    @Test
    void whatIsReviewed_isNotChosen() {
        draw(20, 5);
        String drawn = lot().drawnTickets().get(0);
        String other = lot().items().stream()
                .map(Item::ticket)
                .filter(t -> !lot().drawnTickets().contains(t))
                .findFirst()
                .orElseThrow();
        refused(() -> AuditRules.give(lot(), new ReviewGiven(other, 1, "sue", List.of(), ""), List.of(), true));
        refused(() ->
                AuditRules.give(lot(), new ReviewGiven(drawn, 1, "sue", List.of(), ""), List.of("worked on it"), true));
        List<String> why = List.of("worked on it");
        refused(() -> AuditRules.give(lot(), new ReviewGiven(drawn, 1, "sue", why, "Alone"), why, true));
        refused(() -> AuditRules.give(lot(), new ReviewGiven(drawn, 1, "sue", why, ""), why, false));
        AuditRules.give(lot(), new ReviewGiven(drawn, 1, "sue", why, "There is nobody else"), why, false);
        AuditRules.give(lot(), new ReviewGiven(drawn, 1, "sue", List.of(), ""), List.of(), true);
        review(drawn, 1, "sue", "");
        refused(() -> AuditRules.give(lot(), new ReviewGiven(drawn, 1, "boris", List.of(), ""), List.of(), true));
        refused(() -> AuditRules.give(lot(), new ReviewGiven(drawn, 2, "sue", List.of(), ""), List.of(), true));
    }

    @Test
    void marks_areFinalOnceSigned_andTheReviewersOwn() {
        draw(20, 5);
        String ticket = lot().drawnTickets().get(0);
        refused(() -> AuditRules.own(lot(), ticket, 1, "sue", List.of()));
        add(new ReviewGiven(ticket, 1, "sue", List.of(), ""));
        refused(() -> AuditRules.sign(lot().review(ticket, 1).orElseThrow(), SHEET));
        refused(() -> AuditRules.own(lot(), ticket, 1, "boris", List.of()));
        refused(() -> AuditRules.own(lot(), ticket, 1, "sue", List.of("worked on it")));
        AuditRules.own(lot(), ticket, 1, "sue", List.of());
        refused(() -> AuditRules.decline(lot(), ticket, 1, "boris", "Not mine"));
        refused(() -> AuditRules.decline(lot(), ticket, 1, "sue", " "));
        AuditRules.decline(lot(), ticket, 1, "sue", "No time");
        add(new AuditAct.ReviewDeclined(ticket, 1, "No time"), "vera");
        review(ticket, 1, "sue", "");
        refused(() -> AuditRules.own(lot(), ticket, 1, "sue", List.of()));
        refused(() -> AuditRules.decline(lot(), ticket, 1, "sue", "Wrong"));
    }

    @Test
    void theSecondReader_isNotTheFirst() {
        draw(20, 5);
        String twice = lot().secondTickets().get(0);
        review(twice, 1, "sue", "");
        refused(() -> AuditRules.give(lot(), given(twice, 2, "sue"), List.of(), true));
        AuditRules.give(lot(), given(twice, 2, "boris"), List.of(), true);
    }

    /** Two who agree that it is not so, and not how much it weighs, differ. */
    @Test
    void anotherClass_isADifference_andIsSettledInWords() {
        draw(20, 5);
        String twice = lot().secondTickets().get(0);
        review(twice, 1, "sue", "expectation-first");
        add(given(twice, 2, "boris"));
        add(new Marked(twice, 2, "expectation-first", Mark.NOT_SATISFIED, DefectClass.MINOR, List.of(), "no bound"));
        add(new SecondSigned(twice, 6));
        assertEquals(1, lot().differences().size());
        refused(() -> AuditRules.settle(
                lot(), new Settled(twice, "expectation-first", Mark.SATISFIED, null, " "), SHEET, List.of()));
        refused(() -> AuditRules.talk(lot(), talk("What a bound is", "sue", "boris")));
        add(new Settled(twice, "expectation-first", Mark.SATISFIED, null, "It names one"));
        assertEquals(
                List.of(),
                LotResult.counting(lot(), twice).stream()
                        .filter(m -> m.mark() == Mark.NOT_SATISFIED)
                        .toList());
    }

    /** Under 60 pairs, or where readers agree well, nobody has to talk. */
    @Test
    void talk_isAskedFor_fromSixtyPairs_andOnlyWhereReadersAgreeLittle() {
        draw(20, 5);
        List<String> twice = lot().secondTickets();
        twice.forEach(t -> review(t, 1, "sue", "expectation-first"));
        int each = SHEET.rows().size();
        for (int i = 0; i < twice.size(); i++) {
            review(twice.get(i), 2, "boris", "");
            assertEquals((i + 1) * each >= 60, !lot().talksDue().isEmpty(), (i + 1) * each + " pairs");
        }
        acts.clear();
        draw(20, 5);
        twice.forEach(t -> review(t, 1, "sue", "expectation-first"));
        twice.forEach(t -> review(t, 2, "boris", "expectation-first"));
        assertFalse(!lot().talksDue().isEmpty(), "they agree on everything");
    }

    private static AuditAct.TalkRecorded talk(String words, String... readers) {
        return new AuditAct.TalkRecorded(words, List.of(readers));
    }

    /** Who agrees little with one reader is not saved by agreeing with another; each two talk for themselves. */
    @Test
    void agreement_isOfEachTwoReaders_whoeverReadFirst() {
        draw(20, 10);
        List<String> twice = lot().secondTickets();
        int each = SHEET.rows().size();
        assertEquals(5, twice.size());
        // Sue and Boris read three, in either order, and differ on the same; Sue and Vera read two and agree on all
        review(twice.get(0), 1, "sue", "expectation-first");
        review(twice.get(0), 2, "boris", "");
        review(twice.get(1), 1, "boris", "");
        review(twice.get(1), 2, "sue", "expectation-first");
        review(twice.get(2), 1, "sue", "cause-named");
        review(twice.get(2), 2, "boris", "");
        for (String ticket : twice.subList(3, 5)) {
            review(ticket, 1, "vera", "expectation-first");
            review(ticket, 2, "sue", "expectation-first");
        }
        List<ReaderAgreement> all = ReaderAgreement.of(lot());
        assertEquals(
                List.of("boris sue", "sue vera"),
                all.stream().map(a -> a.one() + " " + a.other()).toList());
        ReaderAgreement little = all.get(0);
        assertEquals(3L * each, little.pairs());
        assertEquals(3L * each - 3, little.agreed());
        int satisfied = Mark.SATISFIED.ordinal();
        int not = Mark.NOT_SATISFIED.ordinal();
        assertEquals(3, little.table().get(satisfied).get(not), "rows are Boris, whoever read first");
        assertEquals(0, little.table().get(not).get(satisfied));
        assertEquals(0, little.kappa().orElseThrow().kappa().orElseThrow(), 1e-12);
        assertEquals(Map.of("expectation-first", 2L, "cause-named", 1L), little.apart());
        assertEquals(List.of("expectation-first"), little.mostApart());
        ReaderAgreement well = all.get(1);
        assertEquals(2L * each, well.agreed());
        assertEquals(List.of(), well.mostApart());
        assertEquals(List.of(little), lot().talksDue());
        add(talk("What an expectation is", "sue", "vera"));
        assertEquals(1, lot().talksDue().size(), "not theirs");
        add(talk("What an expectation is", "sue", "boris"));
        assertEquals(List.of(), lot().talksDue());
    }

    /** An entry of the time before names nobody: it was of all readers of its lot. */
    @Test
    void aTalkThatNamesNobody_isOfAll() {
        draw(20, 5);
        lot().secondTickets().forEach(t -> review(t, 1, "sue", "expectation-first"));
        lot().secondTickets().forEach(t -> review(t, 2, "boris", ""));
        assertEquals(1, lot().talksDue().size());
        add(new AuditAct.TalkRecorded("What a bound is", null));
        assertEquals(List.of(), lot().talksDue());
    }

    /** Else somebody takes all reviews, looks, and leaves those that he does not like to others. */
    @Test
    void nobodyHoldsTwoReviews_norGetsAgainWhatTheyDeclined() {
        draw(20, 5);
        String one = lot().drawnTickets().get(0);
        String other = lot().drawnTickets().get(1);
        add(given(one, 1, "sue"));
        assertEquals(one, lot().unfinished("sue").orElseThrow().turn().ticket());
        refused(() -> AuditRules.give(lot(), given(other, 1, "sue"), List.of(), true));
        AuditRules.give(lot(), given(other, 1, "boris"), List.of(), true);
        add(new AuditAct.ReviewDeclined(one, 1, "The owner is a friend"), "sue");
        refused(() -> AuditRules.give(lot(), given(one, 1, "sue"), List.of(), true));
        refused(() -> AuditRules.give(lot(), given(one, 2, "sue"), List.of(), true));
        AuditRules.give(lot(), given(other, 1, "sue"), List.of(), true);
        AuditRules.give(lot(), given(one, 1, "boris"), List.of(), true);
        assertEquals(List.of(new AuditLot.Declined("sue", one, 1, "The owner is a friend")), lot().declined());
        review(other, 1, "sue", "");
        assertTrue(lot().unfinished("sue").isEmpty(), "what is signed is finished");
    }

    private static ReviewGiven given(String ticket, int turn, String who) {
        return new ReviewGiven(ticket, turn, who, List.of(), "");
    }

    /** Who left the shop holds no lot up; what they signed stays. */
    @Test
    void anUnsignedReview_isTakenBack_fromWhoMayNotReviewAnyMore() {
        draw(20, 5);
        String ticket = lot().drawnTickets().get(0);
        add(given(ticket, 1, "boris"));
        AuditLot.Review held = lot().review(ticket, 1).orElseThrow();
        refused(() -> AuditRules.giveBack(lot(), held, true));
        AuditRules.giveBack(lot(), held, false);
        add(new AuditAct.ReviewReturned(ticket, 1, "boris"));
        assertTrue(lot().review(ticket, 1).isEmpty());
        assertEquals(List.of(), lot().declined(), "it is no declining");
        AuditRules.give(lot(), given(ticket, 1, "sue"), List.of(), true);
        review(ticket, 1, "sue", "");
        AuditLot.Review signed = lot().review(ticket, 1).orElseThrow();
        refused(() -> AuditRules.giveBack(lot(), signed, false));
    }

    @Test
    void differences_areSettledBeforeTheEnd_andTheEstimateUsesTheSettledMarks() {
        draw(20, 5);
        assertEquals(
                "Sign all reviews: 7 are still open.",
                AuditRules.obstacles(lot()).get(0));
        for (String ticket : lot().drawnTickets()) {
            review(ticket, 1, "sue", "expectation-first");
        }
        LotConcluded end = new LotConcluded(20, 0, 0, true, "Talk about expectations");
        assertEquals(List.of("Sign all second reviews: 5 are still open."), AuditRules.obstacles(lot()));
        refused(() -> AuditRules.conclude(lot(), end));
        assertEquals(5, lot().secondTickets().size());
        for (String ticket : lot().secondTickets()) {
            review(ticket, 2, "boris", "");
        }
        assertEquals(5, lot().differences().size());
        assertEquals(5 * SHEET.rows().size(), lot().pairs().size());
        assertEquals(
                List.of(
                        "Settle where the two readers differ: 5 are not settled.",
                        "Two readers agree little: talk, and record what you agreed on."),
                AuditRules.obstacles(lot()));
        refused(() -> AuditRules.conclude(lot(), end));
        String first = lot().differences().get(0).ticket();
        Settled settled = new Settled(first, "expectation-first", Mark.SATISFIED, null, "It names a bound");
        refused(() -> AuditRules.settle(lot(), settled, SHEET, List.of("worked on it")));
        refused(() -> AuditRules.settle(
                lot(), new Settled(first, "cause-named", Mark.SATISFIED, null, "Why not"), SHEET, List.of()));
        AuditRules.settle(lot(), settled, SHEET, List.of());
        lot().differences()
                .forEach(d -> add(new Settled(d.ticket(), "expectation-first", Mark.SATISFIED, null, "A bound")));
        assertTrue(!lot().talksDue().isEmpty());
        refused(() -> AuditRules.conclude(lot(), end));
        refused(() -> AuditRules.talk(lot(), talk(" ", "sue", "boris")));
        refused(() -> AuditRules.talk(lot(), talk("What a bound is", "sue", "vera")));
        AuditRules.talk(lot(), talk("What a bound is", "sue", "boris"));
        add(talk("What a bound is", "sue", "boris"));
        refused(() -> AuditRules.talk(lot(), talk("Once more", "boris", "sue")));
        assertEquals(
                List.of("The random part has more defects than the plan allows: review the rest of it."),
                AuditRules.obstacles(lot()));
        LotResult result = LotResult.of(lot());
        assertEquals(2, result.strata().stream().mapToInt(Line::found).sum());
        refused(() -> AuditRules.askAddendum(lot(), new AddendumAsked(first, "expectation-first", now, "Say it")));
    }

    @Test
    void anAddendum_isAskedForOnce_whereSomethingIsNotSatisfied() {
        draw(20, 5);
        String ticket = lot().drawnTickets().get(0);
        AddendumAsked ask = new AddendumAsked(ticket, "expectation-first", now, "Say what you expected");
        refused(() -> AuditRules.askAddendum(lot(), ask));
        for (String drawn : lot().drawnTickets()) {
            review(drawn, 1, "sue", "expectation-first");
        }
        // whoever holds a blind second review would learn from it what the first one found
        refused(() -> AuditRules.askAddendum(lot(), ask));
        lot().secondTickets().forEach(second -> review(second, 2, "boris", "expectation-first"));
        AuditRules.askAddendum(lot(), ask);
        refused(() -> AuditRules.askAddendum(lot(), new AddendumAsked(ticket, "expectation-first", now, " ")));
        refused(() -> AuditRules.askAddendum(lot(), new AddendumAsked(ticket, "cause-named", now, "More")));
        add(ask);
        refused(() -> AuditRules.askAddendum(lot(), ask));
    }

    /** So many marks of both readers, of which the last differs. */
    private ReaderAgreement agreement(int pairs) {
        acts.clear();
        draw(20, 5);
        String ticket = lot().drawnTickets().get(0);
        for (int turn : new int[] {1, 2}) {
            add(new ReviewGiven(ticket, turn, turn == 1 ? "sue" : "boris", List.of(), ""));
            for (int i = 0; i < pairs; i++) {
                Mark mark = i == pairs - 1 && turn == 2 ? Mark.CANNOT_TELL : Mark.SATISFIED;
                String code = SHEET.rows().get(i).code();
                add(new Marked(ticket, turn, code, mark, null, List.of(1), mark == Mark.SATISFIED ? "" : "No word"));
            }
            add(turn == 1 ? new ReviewSigned(ticket, 6) : new SecondSigned(ticket, 6));
        }
        return ReaderAgreement.of(lot()).get(0);
    }

    @Test
    void kappa_isToldFromThirtyPairs() {
        assertEquals(29, agreement(29).pairs());
        assertTrue(agreement(29).kappa().isEmpty(), "counts, and no kappa");
        assertEquals(28, agreement(29).agreed());
        assertTrue(agreement(30).kappa().isPresent());
        assertEquals(29, agreement(30).agreed());
    }

    /** Past its time and not before, once, by another than who was asked, and only while nothing was written. */
    @Test
    void anAddendumThatNeverComes_isClosedOnce_afterItsTime_andTheDefectStays() {
        draw(20, 5);
        for (String drawn : lot().drawnTickets()) {
            review(drawn, 1, "sue", "expectation-first");
        }
        lot().secondTickets().forEach(second -> review(second, 2, "boris", "expectation-first"));
        String ticket = lot().drawnTickets().get(0);
        Instant due = now.plusSeconds(600);
        add(new AddendumAsked(ticket, "expectation-first", due, "Say what you expected"));
        LotResult before = LotResult.of(lot());
        AddendumClosed closed = new AddendumClosed(ticket, "expectation-first", "Tina has left");
        Instant over = due.plusNanos(1000);
        refused(() -> AuditRules.closeAddendum(lot(), closed, "tina", false, "sue", due.minusNanos(1000)));
        refused(() -> AuditRules.closeAddendum(lot(), closed, "tina", false, "sue", due));
        refused(() -> AuditRules.closeAddendum(lot(), closed, "tina", true, "sue", over));
        refused(() -> AuditRules.closeAddendum(lot(), closed, "sue", false, "sue", over));
        for (AddendumClosed other : List.of(
                new AddendumClosed(ticket, "cause-named", "Why"),
                new AddendumClosed(lot().drawnTickets().get(1), "expectation-first", "Why"),
                new AddendumClosed(ticket, "expectation-first", " "))) {
            refused(() -> AuditRules.closeAddendum(lot(), other, "tina", false, "sue", over));
        }
        AuditRules.closeAddendum(lot(), closed, "tina", false, "sue", over);
        add(closed);
        refused(() -> AuditRules.closeAddendum(lot(), closed, "tina", false, "boris", over.plusSeconds(60)));
        refused(() -> AuditRules.askAddendum(lot(), new AddendumAsked(ticket, "expectation-first", over, "Once more")));
        assertEquals(before, LotResult.of(lot()), "no addendum, and none that is missing, changes what was found");
        assertEquals(
                "Tina has left",
                lot().addendumClosed(ticket, "expectation-first").orElseThrow().remark());
    }

    /** Else a reviewer would choose by the order of signing what is read twice, and make a blind review readable in the middle. */
    @Test
    void whatIsReadTwice_doesNotShift_whileFirstReviewsGoOn() {
        draw(80, 59);
        List<String> second = lot().secondTickets();
        List<String> others =
                lot().drawnTickets().stream().filter(t -> !second.contains(t)).toList();
        review(others.get(0), 1, "xena", "");
        assertEquals(second, lot().secondTickets());
        assertFalse(lot().isReadable(others.get(0)), "it may still become one that is read twice");
        for (String ticket : lot().drawnTickets()) {
            if (lot().review(ticket, 1).isEmpty()) {
                review(ticket, 1, "sue", "");
            }
        }
        List<String> more =
                lot().secondTickets().stream().filter(t -> !second.contains(t)).toList();
        assertEquals(List.of(others.get(0)), more, "one of each reviewer");
        assertFalse(lot().isReadable(others.get(0)));
        review(others.get(0), 2, "boris", "");
        assertTrue(lot().isReadable(others.get(0)));
        assertTrue(lot().isReadable(others.get(1)));
        assertFalse(lot().isReviewed());
    }

    @Test
    void lotOfNoTickets_isDrawn_andCanBeConcluded() {
        draw(0, 5);
        assertEquals(AuditLot.State.DRAWN, lot().state());
        AuditRules.conclude(lot(), new LotConcluded(0, 0, 0, true, "Nothing ended"));
        refused(() -> AuditRules.conclude(lot(), new LotConcluded(0, 0, 0, true, " ")));
    }

    @Test
    void secondReaderWithAPartInTheTicket_setsItApart() {
        draw(20, 5);
        String ticket = lot().secondTickets().get(0);
        review(ticket, 1, "boris", "cause-named");
        add(new ReviewGiven(ticket, 2, "sue", List.of("worked on it"), "Alone"));
        assertEquals(List.of(ticket), LotResult.of(lot()).apart());
    }

    @Test
    void whoIsNotIndependent_isCountedApart() {
        draw(20, 5);
        String apart = lot().drawn().get(Stratum.REST).get(0);
        add(new ReviewGiven(apart, 1, "sue", List.of("worked on it"), "Alone"));
        SHEET.rows()
                .forEach(r -> add(
                        new Marked(apart, 1, r.code(), Mark.NOT_SATISFIED, DefectClass.CRITICAL, List.of(), "bad")));
        add(new ReviewSigned(apart, 6));
        LotResult result = LotResult.of(lot());
        assertEquals(List.of(apart), result.apart());
        assertEquals(19, result.items());
        assertEquals(0, result.strata().stream().mapToInt(Line::found).sum());
    }

    @Test
    void estimate_withCensusAndOneOrTwoRandomStrata() {
        LotResult one = LotResult.of(
                List.of(new Line(Stratum.HAZARD, 30, 30, 2, 0), new Line(Stratum.REST, 370, 59, 1, 0)), List.of());
        Published.check(EXACT, List.of(3, 33, 29), List.of(one.lower(), one.upper(), one.atMost()));
        assertEquals(2 + 370.0 / 59, one.point(), 1e-12);
        LotResult two = LotResult.of(
                List.of(new Line(Stratum.TRAINEE, 60, 20, 0, 0), new Line(Stratum.REST, 120, 30, 1, 0)), List.of());
        Published.check(EXACT, 16, two.atMost());
        LotResult unsure = LotResult.of(
                List.of(new Line(Stratum.HAZARD, 30, 30, 1, 1), new Line(Stratum.REST, 370, 59, 0, 1)), List.of());
        Published.check(EXACT, List.of(1, 33, 29), List.of(unsure.lower(), unsure.upper(), unsure.atMost()));
        LotResult all = LotResult.of(List.of(new Line(Stratum.REST, 12, 12, 3, 0)), List.of());
        assertEquals(List.of(3, 3, 3), List.of(all.lower(), all.upper(), all.atMost()));
    }

    private void cannotTell(String ticket, String code) {
        add(new ReviewGiven(ticket, 1, "sue", List.of(), ""));
        for (ReviewSheet.Row row : SHEET.rows()) {
            boolean unsure = row.code().equals(code);
            add(new Marked(
                    ticket,
                    1,
                    row.code(),
                    unsure ? Mark.CANNOT_TELL : Mark.SATISFIED,
                    null,
                    row.cited(),
                    unsure ? "A time would have told" : ""));
        }
        add(new ReviewSigned(ticket, 6));
    }

    /**
     * Two of two hazards and 5 of the 18 others are looked at; one cannot be told. By hand, of C(18, 5) = 8568 samples: with none found
     * C(18 - M, 5) must be above 428.4 (462 at M = 7, 252 at 8) or above 214.2 (252 at 8, 126 at 9); with one found
     * C(18 - M, 5) + M C(18 - M, 4) above 428.4 (756 at 10, 406 at 11) or above 214.2 (406 at 11, 186 at 12).
     */
    @ParameterizedTest
    @CsvSource({"summary-written,0,8,7", "scope-known,0,8,7", "expectation-first,1,11,10", "hazards-screened,1,11,10"})
    void whatCannotBeTold_widensTheBounds_onlyWhereADefectWouldCount(String code, int unsure, int upper, int atMost) {
        draw(20, 5);
        String one = lot().drawn().get(Stratum.REST).get(0);
        lot().drawnTickets().forEach(t -> {
            if (t.equals(one)) {
                cannotTell(t, code);
            } else {
                review(t, 1, "sue", "");
            }
        });
        LotResult result = LotResult.of(lot());
        assertEquals(unsure, result.strata().stream().mapToInt(Line::unsure).sum());
        assertEquals(List.of(0, upper, atMost), List.of(result.lower(), result.upper(), result.atMost()));
        assertEquals(0, result.point());
    }

    @Test
    void outlook_saysBeforehandWhatASampleShows() {
        Outlook outlook = Outlook.of(400, 59, 0);
        Published.check(EXACT, 18, outlook.ifNone());
        Published.check(EXACT, 0.962253, outlook.discovery().get(3).chance(), 1e-6);
        assertEquals(20, outlook.discovery().get(3).defects());
        assertEquals(
                List.of(43, 72, 97, 121),
                outlook.plans().stream().map(p -> p.looked()).toList());
        assertEquals(1, outlook.curve().get(0).accepted());
        assertEquals(0, Outlook.of(1, 1, 0).ifNone());
        assertEquals(
                List.of(1),
                Outlook.of(3, 2, 1).plans().stream().map(p -> p.defects()).toList());
    }

    private String notDrawn() {
        return lot().rest().get(Stratum.REST).get(0);
    }

    /** Else whoever knows where faults are has the sample show them, or leaves it as he likes it. */
    @Test
    void whatSomebodyChose_isReviewed_andMovesNoEstimate() {
        draw(20, 5);
        String chosen = notDrawn();
        String drawn = lot().drawnTickets().get(0);
        TicketChosen act = new TicketChosen(chosen, "The owner came back twice");
        refused(() -> AuditRules.choose(lot(), new TicketChosen(drawn, "It was drawn")));
        refused(() -> AuditRules.choose(lot(), new TicketChosen("40718-6", "Of another lot")));
        refused(() -> AuditRules.choose(lot(), new TicketChosen(chosen, " ")));
        refused(() -> AuditRules.give(lot(), given(chosen, 1, "sue"), List.of(), true));
        AuditRules.choose(lot(), act);
        add(act);
        refused(() -> AuditRules.choose(lot(), act));
        AuditRules.give(lot(), given(chosen, 1, "sue"), List.of(), true);
        refused(() -> AuditRules.give(lot(), given(chosen, 2, "sue"), List.of(), true));
        lot().drawnTickets().forEach(t -> review(t, 1, "sue", ""));
        lot().secondTickets().forEach(t -> review(t, 2, "boris", ""));
        LotResult before = LotResult.of(lot());
        assertEquals(
                List.of("Sign the reviews of tickets that were chosen: 1 is still open."), AuditRules.obstacles(lot()));
        review(chosen, 1, "sue", "expectation-first");
        assertEquals(before, LotResult.of(lot()));
        assertTrue(LotResult.isAccepted(lot()));
        assertEquals(List.of(), AuditRules.obstacles(lot()));
        assertEquals(
                new SignalWorth(0, 0, 0, 5), SignalWorth.of(lot(), SignalKind.SHORT_TEXT, java.util.Set.of(chosen)));
    }

    @Test
    void tenAreChosen_andNoMore() {
        draw(40, 5);
        List<String> left = lot().rest().get(Stratum.REST);
        for (int i = 0; i < AuditRules.MOST_CHOSEN; i++) {
            TicketChosen act = new TicketChosen(left.get(i), "To look at it");
            AuditRules.choose(lot(), act);
            add(act);
        }
        assertEquals(10, lot().chosen().size());
        refused(() -> AuditRules.choose(lot(), new TicketChosen(left.get(10), "One more")));
    }

    private void reviewAll(String faulty) {
        lot().drawnTickets().stream()
                .filter(t -> !lot().isSigned(t, 1))
                .forEach(t -> review(
                        t, 1, "sue", lot().drawn().get(Stratum.REST).get(0).equals(t) ? faulty : ""));
        lot().secondTickets().stream()
                .filter(t -> !lot().isSigned(t, 2))
                .forEach(t -> review(
                        t, 2, "boris", lot().drawn().get(Stratum.REST).get(0).equals(t) ? faulty : ""));
    }

    /** Nobody concludes a lot that was not accepted without what the plan said beforehand. */
    @Test
    void notAccepted_theRestIsReviewed_inTheOrderOfTheDraw() {
        draw(20, 5);
        refused(() -> AuditRules.drawRest(lot()));
        List<String> sample = lot().drawn().get(Stratum.REST);
        reviewAll("expectation-first");
        LotConcluded end = new LotConcluded(20, 0, 0, false, "Talk");
        assertEquals(
                List.of("The random part has more defects than the plan allows: review the rest of it."),
                AuditRules.obstacles(lot()));
        refused(() -> AuditRules.conclude(lot(), end));
        refused(() -> AuditRules.choose(lot(), new TicketChosen(notDrawn(), "Rather this one")));
        assertFalse(AuditRules.mayShowSignals(lot()), "whoever reviews the rest would see them");
        AuditRules.drawRest(lot());
        acts.add(4, new Entry(99, now, "sue", new TicketChosen(notDrawn(), "Chosen before it was drawn")));
        assertEquals(1, lot().chosen().size());
        add(new AuditAct.RestDrawn(lot().rest()));
        assertEquals(List.of(), lot().chosen(), "now it was drawn, and counts");
        refused(() -> AuditRules.drawRest(lot()));
        assertEquals(18, lot().drawn().get(Stratum.REST).size());
        assertEquals(sample, lot().drawn().get(Stratum.REST).subList(0, 5), "two samples of one lot nest");
        assertEquals(lot().sample(), lot().drawn(), "the draw can be checked as before");
        assertEquals(java.util.Map.of(), lot().rest());
        assertFalse(lot().isReviewed());
        refused(() -> AuditRules.conclude(lot(), end));
        reviewAll("");
        assertEquals(List.of(), AuditRules.obstacles(lot()));
        assertTrue(AuditRules.mayShowSignals(lot()));
        assertFalse(LotResult.isAccepted(lot()));
        assertTrue(LotResult.of(lot()).isCensus());
        AuditRules.conclude(lot(), end);
    }

    @Test
    void accepted_orWithoutARandomPart_nothingFollows() {
        draw(20, 5);
        reviewAll("");
        refused(() -> AuditRules.drawRest(lot()));
        assertEquals(List.of(), AuditRules.obstacles(lot()));
        acts.clear();
        draw(6, 5);
        reviewAll("expectation-first");
        assertEquals(List.of(), AuditRules.obstacles(lot()), "every ticket was looked at: the number is known");
        refused(() -> AuditRules.drawRest(lot()));
    }

    /** A minor defect is none by which a lot is judged. */
    @Test
    void minorDefects_leaveALotAccepted() {
        draw(20, 5);
        reviewAll("summary-written");
        assertTrue(LotResult.isAccepted(lot()));
    }

    private AuditLot concludedWith(AuditPlan plan, boolean accepted) {
        acts.clear();
        add(new PlanStated(plan.text()));
        add(new LotFrozen(items(20), 0, null));
        add(new SeedDrawn(9, HEAD, "", Draw.of(utf8(HEAD), plan.bytes()).seed().hex()));
        add(new SampleDrawn(lot().sample()));
        add(new LotConcluded(20, 0, 9, accepted, "Twice as many"));
        return lot();
    }

    private static AuditPlan plan(Take rest, AuditPlan.Otherwise otherwise) {
        Map<Stratum, Take> takes = new EnumMap<>(plan(5).takes());
        takes.put(Stratum.REST, rest);
        return new AuditPlan("2026-11", START, END, takes, 0, otherwise, "");
    }

    @Test
    void notAccepted_theNextPlanTakesTwiceAsMany_ofEachRandomPart() {
        AuditPlan plan = plan(new Take(0, 5), AuditPlan.Otherwise.DOUBLE_NEXT);
        AuditLot due = concludedWith(plan, false);
        assertTrue(AuditRules.isDoublingDue(due));
        assertFalse(AuditRules.isDoublingDue(concludedWith(plan, true)));
        assertFalse(AuditRules.isDoublingDue(concludedWith(plan(5), false)), "the rest was reviewed instead");
        assertFalse(
                AuditRules.isDoublingDue(concludedWith(plan(new Take(0, 18), AuditPlan.Otherwise.DOUBLE_NEXT), false)),
                "all were looked at");
        List<AuditLot> lots = List.of(due);
        refused(() -> AuditRules.doubled(plan(5), lots));
        refused(() -> AuditRules.doubled(withTrainees(plan(9), new Take(50, 10)), lots));
        AuditRules.doubled(withTrainees(plan(10), new Take(50, 10)), lots);
        AuditRules.doubled(withTrainees(plan(10), Take.ALL), lots);
        refused(() -> AuditRules.doubled(withTrainees(plan(10), new Take(49, 10)), lots));
        refused(() -> AuditRules.doubled(withTrainees(plan(10), new Take(50, 9)), lots));
        AuditRules.doubled(plan(5), List.of());
    }

    private static AuditPlan withTrainees(AuditPlan plan, Take trainees) {
        Map<Stratum, Take> takes = new EnumMap<>(plan.takes());
        takes.put(Stratum.TRAINEE, trainees);
        takes.put(Stratum.HAZARD, new Take(0, 1));
        return new AuditPlan("2026-12", START, END, takes, 0, plan.otherwise(), "");
    }

    /** Counted are tickets whose marks were made without knowing the signal, each once, and only drawn ones. */
    @Test
    void worthOfASignal_countsWhatWasDrawn_andTheBaseOnlyWhatWasDrawnAtRandom() {
        draw(20, 5);
        String hazard = lot().drawn().get(Stratum.HAZARD).get(0);
        String faulty = lot().drawn().get(Stratum.REST).get(0);
        String sound = lot().drawn().get(Stratum.REST).get(1);
        String outside = notDrawn();
        assertFalse(AuditRules.mayShowSignals(lot()));
        reviewAll("expectation-first");
        java.util.Set<String> marked = java.util.Set.of(hazard, faulty, sound, outside);
        assertEquals(new SignalWorth(1, 3, 0, 3), SignalWorth.of(lot(), SignalKind.EXPECTATION_JUST_BEFORE, marked));
        assertEquals(
                new SignalWorth(0, 3, 0, 3),
                SignalWorth.of(lot(), SignalKind.VALUE_TO_THE_DIGIT, marked),
                "a defect of another kind");
        assertEquals(
                new SignalWorth(0, 1, 1, 4), SignalWorth.of(lot(), SignalKind.LEFT_AT_ONCE, java.util.Set.of(sound)));
    }

    @Test
    void worthOfASignal_leavesOutWhomNobodyIndependentReviewed() {
        draw(20, 5);
        String apart = lot().drawn().get(Stratum.REST).get(0);
        add(new ReviewGiven(apart, 1, "sue", List.of("worked on it"), "Alone"));
        add(new Marked(apart, 1, "cause-named", Mark.NOT_SATISFIED, DefectClass.MAJOR, List.of(), "bad"));
        add(new ReviewSigned(apart, 6));
        reviewAll("");
        assertEquals(
                new SignalWorth(0, 0, 0, 4), SignalWorth.of(lot(), SignalKind.LEFT_AT_ONCE, java.util.Set.of(apart)));
    }

    @Test
    void signals_areShown_onlyWhenEveryMarkIsFinal() {
        draw(20, 5);
        AuditAct.SignalSwitched off = new AuditAct.SignalSwitched(SignalKind.SHORT_TEXT, false, "It tells nothing");
        lot().drawnTickets().forEach(t -> review(t, 1, "sue", ""));
        assertFalse(AuditRules.mayShowSignals(lot()), "second reviews are open");
        refused(() -> AuditRules.switchSignal(lot(), off));
        List<String> twice = lot().secondTickets();
        twice.forEach(t -> review(t, 2, "boris", twice.get(0).equals(t) ? "expectation-first" : ""));
        assertFalse(AuditRules.mayShowSignals(lot()), "a difference is open");
        add(new Settled(twice.get(0), "expectation-first", Mark.SATISFIED, null, "It names a bound"));
        assertTrue(AuditRules.mayShowSignals(lot()));
        AuditRules.switchSignal(lot(), off);
        refused(() -> AuditRules.switchSignal(lot(), new AuditAct.SignalSwitched(SignalKind.SHORT_TEXT, false, "")));
    }
}
