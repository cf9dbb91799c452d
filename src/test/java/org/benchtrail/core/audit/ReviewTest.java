package org.benchtrail.core.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.Independence.Beside;
import org.benchtrail.core.audit.Independence.Person;
import org.benchtrail.core.method.AskedOfSome;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.core.method.EndedTickets;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Cancelled;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.junit.jupiter.api.Test;

/** What a review asks of a ticket, by whom, and how it is marked. */
class ReviewTest {
    private static final Beside NOTHING = new Beside("Rae Lind", Set.of());
    private static final ReviewSheet SHEET =
            ReviewSheet.of(EndedTickets.closed().sheet(), EndedTickets.closed().policy());

    @Test
    void everyRequirement_hasItsQuestionAndItsClass() {
        for (Requirement r : Requirements.all()) {
            assertTrue(r.review().question().endsWith("?"), r::code);
            assertFalse(r.review().restsOn().isEmpty(), r::code);
        }
        assertEquals(
                Set.of(
                        "hazards-screened",
                        "data-protected",
                        "data-still-protected",
                        "invasive-guarded",
                        "cautions-taken",
                        "plan-approved"),
                ofClass(DefectClass.CRITICAL),
                "name here what is critical where it is not satisfied");
        assertEquals(
                Set.of(
                        "symptom-observed",
                        "evidence-attached",
                        "theory-chosen",
                        "not-already-refuted",
                        "expectation-first",
                        "result-recorded",
                        "theory-supported",
                        "action-planned",
                        "parts-fit",
                        "actions-settled",
                        "symptoms-gone",
                        "readings-back",
                        "function-checked",
                        "soak-time-passed",
                        "cause-named",
                        "mentor-signed"),
                ofClass(DefectClass.MAJOR),
                "name here what is major where it is not satisfied");
    }

    private static Set<String> ofClass(DefectClass wanted) {
        return Requirements.all().stream()
                .filter(r -> r.review().usual() == wanted)
                .map(Requirement::code)
                .collect(java.util.stream.Collectors.toSet());
    }

    @Test
    void aClosedTicket_isAskedForAll_aCancelledOneForWhatItLeft() {
        assertEquals(Requirements.all().size(), SHEET.rows().size());
        EndedTickets.Told cancelled = EndedTickets.cancelled();
        assertEquals(
                List.of("IDENTIFY", "THEORIZE"),
                ReviewSheet.of(cancelled.sheet(), cancelled.policy()).rows().stream()
                        .map(r -> r.requirement().step().name())
                        .distinct()
                        .toList());
    }

    @Test
    void theServer_namesTheEntriesThatAnAnswerRestsOn() {
        assertEquals(1, row("expectation-first").cited().size());
        assertEquals(2, row("theory-supported").cited().size());
        assertEquals(
                List.of(),
                row("mentor-signed").cited().stream()
                        .filter(e -> e > SHEET.entries())
                        .toList());
        assertEquals(Requirement.State.MET, row("expectation-first").gate());
    }

    private static ReviewSheet.Row row(String code) {
        return SHEET.row(code).orElseThrow();
    }

    private static Marked marked(
            String requirement,
            Mark mark,
            @org.jspecify.annotations.Nullable DefectClass defect,
            String remark,
            Integer... entries) {
        return new Marked("40718-6", 1, requirement, mark, defect, List.of(entries), remark);
    }

    private static String refused(Marked marked) {
        return assertThrows(Invalid.class, () -> AuditRules.mark(marked, SHEET))
                .problems()
                .get(0)
                .field();
    }

    @Test
    void marks_needWhatTheyNeed() {
        AuditRules.mark(marked("expectation-first", Mark.SATISFIED, null, "", 3), SHEET);
        AuditRules.mark(marked("expectation-first", Mark.NOT_SATISFIED, DefectClass.MAJOR, "No bound"), SHEET);
        AuditRules.mark(marked("expectation-first", Mark.CANNOT_TELL, null, "A time would have told"), SHEET);
        AuditRules.mark(marked("parts-fit", Mark.NOT_APPLICABLE, null, "No part was used"), SHEET);
        assertEquals("entries", refused(marked("expectation-first", Mark.SATISFIED, null, "")));
        assertEquals("entries", refused(marked("expectation-first", Mark.SATISFIED, null, "", SHEET.entries() + 1)));
        assertEquals("entries", refused(marked("expectation-first", Mark.SATISFIED, null, "", 0)));
        assertEquals(
                "entries",
                refused(marked("expectation-first", Mark.SATISFIED, null, "I believe it")),
                "where entries are kept, words alone show nothing");
        AuditRules.mark(marked("expectation-first", Mark.CANNOT_TELL, null, "x".repeat(2000)), SHEET);
        assertEquals("remark", refused(marked("expectation-first", Mark.CANNOT_TELL, null, "x".repeat(2001))));
        assertEquals("remark", refused(marked("expectation-first", Mark.NOT_SATISFIED, DefectClass.MAJOR, " ")));
        assertEquals("remark", refused(marked("expectation-first", Mark.CANNOT_TELL, null, "")));
        assertEquals("remark", refused(marked("expectation-first", Mark.NOT_APPLICABLE, null, "")));
        String bare = SHEET.rows().stream()
                .filter(r -> r.cited().isEmpty())
                .findFirst()
                .orElseThrow()
                .code();
        assertEquals("entries", refused(marked(bare, Mark.SATISFIED, null, "")), "nothing is kept for it");
        AuditRules.mark(marked(bare, Mark.SATISFIED, null, "By what was done"), SHEET);
        assertEquals("defect", refused(marked("expectation-first", Mark.NOT_SATISFIED, null, "No bound")));
        assertEquals("defect", refused(marked("expectation-first", Mark.SATISFIED, DefectClass.MINOR, "", 3)));
        assertEquals("requirement", refused(marked("no-such", Mark.SATISFIED, null, "")));
    }

    /** Where the gate asked nothing nobody is asked for words, and whoever finds nothing to say gives its reason. */
    @Test
    void whatTheGateDidNotAskFor_needsNoWords() {
        assertEquals(
                AskedOfSome.codes(),
                SHEET.rows().stream()
                        .filter(r -> !r.unasked().isEmpty())
                        .map(ReviewSheet.Row::code)
                        .collect(Collectors.toCollection(TreeSet::new)),
                "the plain ticket gives none of them anything to ask");
        EndedTickets.Told demanding = EndedTickets.demanding();
        assertEquals(
                List.of("not-already-refuted", "invasive-guarded"),
                ReviewSheet.of(demanding.sheet(), demanding.policy()).rows().stream()
                        .filter(r -> !r.unasked().isEmpty())
                        .map(ReviewSheet.Row::code)
                        .toList(),
                "its checks only look, and its theory was the first");
        assertEquals(
                "No action of the plan replaces a part.",
                AuditRules.mark(marked("parts-fit", Mark.NOT_APPLICABLE, null, ""), SHEET)
                        .remark());
        assertEquals(
                "Only a screw",
                AuditRules.mark(marked("parts-fit", Mark.NOT_APPLICABLE, null, "Only a screw"), SHEET)
                        .remark());
        assertEquals("remark", refused(marked("parts-fit", Mark.CANNOT_TELL, null, "")));
    }

    @Test
    void aClass_isRaisedFreelyAndLoweredByOne() {
        AuditRules.mark(marked("hazards-screened", Mark.NOT_SATISFIED, DefectClass.MAJOR, "Only a tick"), SHEET);
        AuditRules.mark(marked("onset-known", Mark.NOT_SATISFIED, DefectClass.CRITICAL, "Wrong day"), SHEET);
        assertEquals("defect", refused(marked("hazards-screened", Mark.NOT_SATISFIED, DefectClass.MINOR, "A tick")));
    }

    @Test
    void whoHadAPartInATicket_isNotIndependent() {
        EndedTickets.Told demanding = EndedTickets.demanding();
        assertEquals(List.of("worked on it", "had it assigned"), reasons("tom", "Tom", demanding, NOTHING));
        assertEquals(List.of("approved its plan"), reasons("sue", "Sue", demanding, NOTHING));
        assertEquals(List.of("signed it as mentor"), reasons("marek", "Marek", demanding, NOTHING));
        assertEquals(List.of(), reasons("boris", "Boris", demanding, NOTHING));
        assertEquals(List.of("waived a requirement"), reasons("sue", "Sue", EndedTickets.waived(), NOTHING));
        assertEquals(List.of("cleared a hazard"), reasons("marek", "Marek", EndedTickets.hazard(), NOTHING));
        EndedTickets.Told handedOn = EndedTickets.handedOn();
        assertTrue(reasons("ines", "Ines", handedOn, NOTHING).contains("had it assigned"));
        assertEquals(
                List.of("accepted it as a case"),
                reasons("boris", "Boris", demanding, new Beside("Rae", Set.of("boris"))));
        assertEquals(List.of("reported it"), reasons("boris", "rae  lind", demanding, NOTHING));
    }

    /** Each judgement that somebody gave on the way, in whichever round, keeps them from reviewing; another's keeps nobody. */
    @Test
    void whoJudgedItOnTheWay_isNotIndependent() {
        Map<Fact, String> judgements = Map.of(
                new LesseningAgreed(3, "It was misread"), "agreed to a correction",
                new PartOverrideApproved(3, "Maker says so"), "let a part through",
                new PlanDeclined("No way back"), "declined its plan",
                new PlanApproved(List.of(3), ""), "approved its plan",
                new SentBack("Look again"), "sent it back",
                new Cancelled("Bought another", null), "cancelled it");
        EndedTickets.Told told = EndedTickets.handedOn();
        Entry last = told.trail().get(told.trail().size() - 1);
        judgements.forEach((fact, reason) -> {
            List<Entry> trail = new ArrayList<>(told.trail());
            trail.add(
                    1,
                    new Entry(
                            new Stamp(
                                    2,
                                    last.stamp().at(),
                                    "zed",
                                    Set.of(Role.TECHNICIAN),
                                    last.stamp().origin()),
                            fact));
            assertEquals(
                    List.of(reason),
                    Independence.reasons(new Person("zed", "Zed"), told.sheet(), trail, Instant.MAX, NOTHING));
            assertEquals(
                    List.of(),
                    Independence.reasons(new Person("boris", "Boris"), told.sheet(), trail, Instant.MAX, NOTHING));
        });
    }

    private static List<String> reasons(String account, String name, EndedTickets.Told told, Beside beside) {
        return Independence.reasons(new Person(account, name), told.sheet(), told.trail(), Instant.MAX, beside);
    }

    /** Else whoever hands a drawn ticket to a reviewer keeps it from that reviewer's eyes. */
    @Test
    void handOverAfterTheFreeze_makesNobodyDependent_workDoes() {
        EndedTickets.Told handed = EndedTickets.handedOverAfterwards(false);
        Instant closed = handed.trail().get(handed.trail().size() - 3).stamp().at();
        Instant handedOver =
                handed.trail().get(handed.trail().size() - 1).stamp().at();
        assertEquals(List.of(), olesReasons(handed, closed));
        assertEquals(List.of(), olesReasons(handed, handedOver.minusNanos(1)));
        assertEquals(List.of("had it assigned"), olesReasons(handed, handedOver));
        assertEquals(List.of("worked on it"), olesReasons(EndedTickets.handedOverAfterwards(true), closed));
    }

    private static List<String> olesReasons(EndedTickets.Told told, Instant frozen) {
        return Independence.reasons(new Person("ole", "Ole"), told.sheet(), told.trail(), frozen, NOTHING);
    }

    @Test
    void aTicket_isInTheFirstStratumThatFits() {
        assertEquals(Stratum.REST, Stratum.of(EndedTickets.closed().sheet(), false));
        assertEquals(Stratum.INCIDENT, Stratum.of(EndedTickets.closed().sheet(), true));
        assertEquals(Stratum.HAZARD, Stratum.of(EndedTickets.hazard().sheet(), true));
        assertEquals(Stratum.DATA, Stratum.of(EndedTickets.drive().sheet(), false));
        assertEquals(Stratum.WAIVER, Stratum.of(EndedTickets.waived().sheet(), false));
        assertEquals(Stratum.NO_WAY_BACK, Stratum.of(EndedTickets.demanding().sheet(), false));
    }

    @Test
    void aPlan_isReadBackAsItWasWritten() {
        java.util.Map<Stratum, Take> takes = new java.util.EnumMap<>(Stratum.class);
        Stream.of(Stratum.values()).forEach(s -> takes.put(s, Take.usual(s, 59)));
        AuditPlan plan = new AuditPlan(
                "2026-11",
                Instant.parse("2026-11-01T00:00:00Z"),
                Instant.parse("2026-12-01T00:00:00Z"),
                takes,
                0,
                AuditPlan.Otherwise.DOUBLE_NEXT,
                "");
        assertTrue(plan.text().startsWith("audit-plan/1\nlot 2026-11\n"));
        assertEquals(plan, AuditPlan.parse(plan.text()));
        assertThrows(Invalid.class, () -> AuditPlan.parse(plan.text().replace("else", "then")));
        assertThrows(Invalid.class, () -> AuditPlan.parse(plan.text() + "\n"));
        assertEquals(59, takes.get(Stratum.REST).of(400));
        assertEquals(25, takes.get(Stratum.TRAINEE).of(100));
        assertEquals(5, takes.get(Stratum.TRAINEE).of(8));
        assertEquals(3, takes.get(Stratum.TRAINEE).of(3));
        assertEquals(new Take(25, 5), Take.parse("25%/5"));
        assertThrows(Invalid.class, () -> Take.parse("0"));
    }
}
