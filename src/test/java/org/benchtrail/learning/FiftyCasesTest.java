package org.benchtrail.learning;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.benchtrail.catalogue.CatalogueActs;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.catalogue.FiguresJson;
import org.benchtrail.catalogue.VersionView;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.learning.WorkedTicket;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.proposals.ProposalActs;
import org.benchtrail.proposals.ProposalView;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;

/**
 * Fifty tickets are worked from report to closure and accepted. The figures then are those of the formula, calculated here a
 * second time from its definition; taken back, they are what they were, to the last bit.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class FiftyCasesTest {
    private static final long SEED = 20_261_125;
    private static final double A = 20;
    private static final double K = 10;
    private static final double SHARE = 0.2;
    private static final List<String> CAUSES = List.of(
            "heat/paste-dried",
            "heat/paste-dried",
            "heat/fan-failed",
            "heat/paste-dried",
            "heat/blocked-airflow-or-hot-room");

    @Inject
    LearningActs acts;

    @Inject
    LearnedFigures figures;

    @Inject
    CatalogueActs catalogue;

    @Inject
    ProposalActs proposals;

    @Inject
    Catalogues catalogues;

    @Inject
    TicketActs tickets;

    @Inject
    PeopleActs people;

    /** What the test itself knows of a case, apart from what the server made of it. */
    private record Known(
            TicketNumber ticket, String technician, String cause, double weight, boolean dust, Instant closed) {}

    private final List<Known> known = new ArrayList<>();
    private Actor first;
    private Actor second;
    private CatalogueVersion before;
    private Actor worker;

    @BeforeAll
    void fiftyTickets() {
        TestSite site = new TestSite(tickets, people);
        first = site.person("fifty-omar", Role.SUPERVISOR);
        second = site.person("fifty-nadia", Role.SUPERVISOR);
        before = catalogues.inForce();
        Map<String, String> names = before.figures().get("heat").category().causes().stream()
                .collect(Collectors.toMap(Cause::id, Cause::name));
        System.out.println("fifty cases from seed " + SEED);
        Random random = new Random(SEED);
        for (int k = 0; k < 50; k++) {
            // one busy technician, whose share is capped, and three others
            String technician = k < 34 ? "fifty-busy" : "fifty-t" + k % 3;
            worker = site.person(technician, Role.TECHNICIAN);
            boolean listed = k % 12 != 11;
            String cause = CAUSES.get(random.nextInt(CAUSES.size()));
            boolean measured = random.nextBoolean();
            boolean dust = random.nextInt(4) == 0;
            WorkedTicket ticket = new WorkedTicket(
                            listed ? names.get(cause) : "a nest in the air duct", listed ? cause : null)
                    .at("Customer " + k + ", first floor")
                    .sure(measured ? Sureness.MEASURED : Sureness.BY_REPAIR)
                    .answers("h4", dust ? "yes" : "no");
            TicketNumber number = site.closes(ticket, worker);
            known.add(new Known(
                    number, technician, listed ? cause : Model.UNLISTED, measured ? 1 : 0.8, dust, Instant.EPOCH));
        }
    }

    @AfterAll
    void leaveTheCatalogueAsItWas() {
        int now = catalogues.inForce().number();
        if (now != before.number()
                && !FiguresJson.write(catalogues.inForce().figures()).equals(FiguresJson.write(before.figures()))) {
            confirmed(catalogue.restore(now, before.number(), "End of the test", first));
        }
    }

    private List<TicketNumber> numbers(int from, int to) {
        return known.subList(from, to).stream().map(Known::ticket).toList();
    }

    /** Weights by technician and cause, after the cap; the figures of section 7 of the design, from their definition. */
    private final class Formula {
        private final Map<String, Double> byCause = new HashMap<>();
        private double all;
        private double dustIfPaste;
        private double answeredIfPaste;

        Formula(Instant at, boolean withUnlisted) {
            List<Known> counted = known.stream()
                    .filter(c -> withUnlisted || !c.cause().equals(Model.UNLISTED))
                    .toList();
            Map<String, Double> raw = new HashMap<>();
            counted.forEach(c -> raw.merge(c.technician(), weight(c, at), Double::sum));
            double cap = cap(raw.values());
            for (Known c : counted) {
                double e = weight(c, at) * Math.min(1, cap / raw.get(c.technician()));
                byCause.merge(c.cause(), e, Double::sum);
                all += e;
                if (c.cause().equals("heat/paste-dried")) {
                    answeredIfPaste += e;
                    dustIfPaste += c.dust() ? e : 0;
                }
            }
        }

        private static double weight(Known c, Instant at) {
            double days = Duration.between(c.closed(), at).toSeconds() / 86400.0;
            return c.weight() * Math.pow(2, -days / 365);
        }

        /** Least fixed point of M = share (A + sum min(R, M)), iterated upward from share x A. */
        private static double cap(Iterable<Double> raw) {
            double m = SHARE * A;
            double change = 1;
            while (change > 1e-14) {
                double sum = 0;
                for (double r : raw) {
                    sum += Math.min(r, m);
                }
                double next = SHARE * (A + sum);
                change = next - m;
                m = next;
            }
            return m;
        }
    }

    private double unlisted(Instant at) {
        Formula f = new Formula(at, true);
        double share = (1 + f.byCause.getOrDefault(Model.UNLISTED, 0.0)) / (A + f.all);
        return Math.min(0.30, Math.max(0.01, share));
    }

    private double prior(String cause, Instant at) {
        List<Cause> causes = before.figures().get("heat").category().causes();
        double weights = causes.stream().mapToDouble(Cause::weight).sum();
        double own = causes.stream()
                .filter(c -> c.id().equals(cause))
                .mapToDouble(Cause::weight)
                .sum();
        Formula f = new Formula(at, false);
        return (1 - unlisted(at)) * (A * own / weights + f.byCause.getOrDefault(cause, 0.0)) / (A + f.all);
    }

    private static double[] ranked(CatalogueVersion version) {
        Evidence answers =
                Evidence.NONE.with(Report.of("1", "h5", "yes", Source.SEEN, Instant.parse("2026-01-05T08:00:00Z")));
        return Ranking.of(version.model("heat").orElseThrow(), answers).all().stream()
                .mapToDouble(Ranking.Ranked::probability)
                .toArray();
    }

    private static String text(CatalogueVersion version) {
        return FiguresJson.write(version.figures());
    }

    private VersionView applied(String note) {
        LearningPreview p = figures.preview(first);
        return confirmed(figures.apply(p.base(), p.at(), p.fingerprint(), true, note, first));
    }

    /** The version that is made of it, once the other supervisor confirms it. */
    private VersionView confirmed(ProposalView proposal) {
        proposals.confirm(proposal.id(), second);
        return catalogue.version(catalogues.inForce().number(), first);
    }

    @Test
    @Order(1)
    void accepting_changesNoFigureYet() {
        acts.accept(numbers(0, 25), first);
        List<CaseView> rest = acts.accept(numbers(25, 50), second);
        assertEquals(25, rest.size());
        List<CaseView> all = acts.judged(CaseState.ACCEPTED, Long.MAX_VALUE, 200, first);
        known.replaceAll(c -> new Known(
                c.ticket(),
                c.technician(),
                c.cause(),
                c.weight(),
                c.dust(),
                all.stream()
                        .filter(v -> v.ticket().equals(c.ticket().toString()))
                        .findFirst()
                        .orElseThrow()
                        .closed()));
        assertEquals(before.number(), catalogues.inForce().number());
    }

    @Test
    @Order(2)
    void preview_saysWhatTheFormulaSays_nowAndWhenTheCasesAreOld() {
        for (int days : new int[] {0, 400}) {
            Instant at = Instant.now().plus(Duration.ofDays(days));
            LearningPreview p = figures.preview(at, first);
            assertEquals(50, p.cases());
            double paste = p.shifts().stream()
                    .filter(s -> s.finding().isEmpty() && s.cause().startsWith("paste dried"))
                    .findFirst()
                    .orElseThrow()
                    .after();
            assertEquals(prior("heat/paste-dried", at), paste, 1e-9);
        }
    }

    @Test
    @Order(3)
    void largeChanges_waitForAgreement() {
        LearningPreview p = figures.preview(first);
        assertTrue(p.waitingForApproval() > 0);
        Invalid refused =
                assertThrows(Invalid.class, () -> figures.apply(p.base(), p.at(), p.fingerprint(), false, "no", first));
        assertEquals("approved", refused.problems().get(0).field());
        Invalid other =
                assertThrows(Invalid.class, () -> figures.apply(p.base(), p.at(), "another", true, "no", first));
        assertEquals("fingerprint", other.problems().get(0).field());
        assertEquals(before.number(), catalogues.inForce().number());
    }

    @Test
    @Order(4)
    void applied_shiftsTheRankingByWhatTheFormulaSays() {
        VersionView made = applied("Fifty cases");
        Instant at = catalogue.basis(made.number(), first).orElseThrow().at();
        CatalogueVersion after = catalogues.inForce();
        assertEquals(made.number(), after.number());
        Model model = after.model("heat").orElseThrow();
        Ranking nothingKnown = Ranking.of(model, Evidence.NONE);
        for (Cause c : model.category().causes()) {
            assertEquals(prior(c.id(), at), nothingKnown.probability(c.id()), 1e-9, c.id());
        }
        assertEquals(unlisted(at), nothingKnown.probability(Model.UNLISTED), 1e-9);
        assertEquals(
                "heat/dust",
                Ranking.of(before.model("heat").orElseThrow(), Evidence.NONE)
                        .all()
                        .get(0)
                        .cause());
        assertEquals("heat/paste-dried", nothingKnown.all().get(0).cause(), "paste now leads, which the site saw most");

        Formula f = new Formula(at, false);
        Learned learned = after.figures().get("heat");
        assertEquals(f.all, learned.cases(), 1e-9);
        assertEquals(
                f.byCause.get("heat/paste-dried"),
                learned.support().prior("heat/paste-dried").cases(),
                1e-9);
        // paste says nothing of dust in the catalogue, so its table starts from the background of .25
        double dust = (K * 0.25 + f.dustIfPaste) / (K + f.answeredIfPaste);
        double stored = learned.category().causes().get(2).deviations().stream()
                .filter(d -> d.finding().equals("h4"))
                .findFirst()
                .orElseThrow()
                .probabilities()
                .get("yes");
        assertEquals(dust, stored, 1e-9);
        assertEquals(
                f.answeredIfPaste,
                learned.support().table("heat/paste-dried", "h4").cases(),
                1e-9);
        assertTrue(after.label("heat").startsWith("learned from"), after.label("heat"));
        assertEquals("starter figures, not yet learned here", after.label("power"));
    }

    @Test
    @Order(5)
    void oneTechnician_isHeldToHisShare() {
        Formula f = new Formula(known.get(0).closed(), false);
        double raw = known.stream()
                .filter(c -> c.technician().equals("fifty-busy") && !c.cause().equals(Model.UNLISTED))
                .mapToDouble(Known::weight)
                .sum();
        double others = known.stream()
                .filter(c -> !c.technician().equals("fifty-busy") && !c.cause().equals(Model.UNLISTED))
                .mapToDouble(Known::weight)
                .sum();
        // M = .2 (20 + M + others) with nobody else at the cap
        double capped = SHARE * (A + others) / (1 - SHARE);
        assertTrue(raw > capped);
        assertEquals(capped + others, f.all, 1e-3);
        assertEquals(f.all, catalogues.inForce().figures().get("heat").cases(), 1e-3);
    }

    @Test
    @Order(6)
    void undoing_restoresEveryBit() {
        int learned = catalogues.inForce().number();
        double[] shifted = ranked(catalogues.inForce());
        VersionView undone = confirmed(figures.undo(learned, "Try again", first));
        assertEquals(before.number(), undone.restores());
        assertEquals(text(before), text(catalogues.inForce()));
        assertArrayEquals(ranked(before), ranked(catalogues.inForce()));
        assertNotEquals(text(before), text(catalogues.version(learned)));
        assertArrayEquals(shifted, ranked(catalogues.version(learned)), "the old version ranks as it did");
        Invalid twice = assertThrows(Invalid.class, () -> figures.undo(undone.number(), "again", first));
        assertEquals("base", twice.problems().get(0).field());
    }

    @Test
    @Order(7)
    void withdrawingAll_andLearningAgain_restoresEveryBit() {
        applied("Fifty cases again");
        assertNotEquals(text(before), text(catalogues.inForce()));
        acts.withdraw(numbers(0, 50), "A trial", first);
        assertNotEquals(text(before), text(catalogues.inForce()), "withdrawing alone changes nothing");
        applied("Without them");
        assertEquals(text(before), text(catalogues.inForce()));
        assertArrayEquals(ranked(before), ranked(catalogues.inForce()));
    }

    @Test
    @Order(8)
    void withdrawingOne_leavesWhatTheOthersGive() {
        acts.accept(numbers(34, 50), first);
        acts.withdraw(numbers(49, 50), "Wrong cause", second);
        LearningPreview p = figures.preview(first);
        List<CaseView> left = acts.judged(CaseState.ACCEPTED, Long.MAX_VALUE, 200, first);
        assertEquals(
                15,
                left.stream().filter(c -> c.technician().startsWith("fifty-")).count());
        assertEquals(left.size(), p.cases());
        acts.withdraw(numbers(34, 49), "End of the test", first);
    }
}
