package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.benchtrail.core.method.desk.*;
import org.benchtrail.core.method.document.*;
import org.benchtrail.core.method.identify.*;
import org.benchtrail.core.method.plan.*;
import org.benchtrail.core.method.test.*;
import org.benchtrail.core.method.theorize.*;
import org.benchtrail.core.method.verify.*;

/**
 * The written method a second time, naively, over the trail alone: it asks neither gate, nor job sheet, nor table of the
 * code. Walks all entries and judges the last one.
 */
final class TrailOracle {
    static final Set<String> WAIVABLE = Set.of(
            "changes-asked",
            "reproduced",
            "data-protected",
            "evidence-attached",
            "logs-reviewed",
            "simple-things-first",
            "not-already-refuted",
            "maker-consulted",
            "parts-fit",
            "data-still-protected",
            "readings-back",
            "function-checked",
            "requester-agrees",
            "soak-time-passed",
            "knowledge-linked",
            "effort-recorded");
    private static final Set<String> OF_IDENTIFY =
            Set.of("changes-asked", "reproduced", "data-protected", "evidence-attached", "logs-reviewed");

    /** Asked for with others, or by a move itself. */
    static final Set<String> OTHERWISE = Set.of(
            "theory-stated",
            "theory-chosen",
            "expectation-first",
            "invasive-guarded",
            "result-recorded",
            "theory-supported",
            "action-planned",
            "plan-approved",
            "cautions-taken",
            "actions-settled",
            "symptoms-gone",
            "summary-written",
            "mentor-signed");

    /** Every requirement that a walk was ever held against by its code. */
    static final Set<String> ASKED = ConcurrentHashMap.newKeySet();

    /** @param since entry since which it has stood as it is @param as roles of who last wrote it */
    private record Item(int n, Fact fact, int round, Stamp by, int since, Set<Role> as) {}

    private final Policy policy;
    private final List<Item> items = new ArrayList<>();
    private final List<Step> path = new ArrayList<>();
    private final List<TheoryStated> refuted = new ArrayList<>();
    private Step step = Step.IDENTIFY;
    private String standing = "open";
    private int round = 1;
    private int roundStart = 1;
    private int openedAt = 1;
    private String assignee = "";
    private Set<Role> assigneeRoles = Set.of();
    private boolean held;
    /** Accounts that worked, with all roles they had then; and those that judged. */
    private final Map<String, Set<Role>> hands = new HashMap<>();

    private final Set<String> judges = new HashSet<>();
    /** What was owed before a correction, with the entry of that correction. */
    private final Map<Item, Integer> owed = new HashMap<>();

    private final List<Stamp> stamps = new ArrayList<>();

    private TrailOracle(Policy policy) {
        this.policy = policy;
    }

    static void judge(List<Entry> trail, Policy policy) {
        TrailOracle oracle = new TrailOracle(policy);
        for (Entry entry : trail.subList(0, trail.size() - 1)) {
            oracle.apply(entry);
        }
        oracle.judge(trail.get(trail.size() - 1));
    }

    private void apply(Entry entry) {
        Stamp stamp = entry.stamp();
        Fact fact = entry.fact();
        if (fact instanceof Corrected c) {
            correct(c, stamp);
        } else if (fact instanceof LesseningAgreed a) {
            Set<Integer> about = new HashSet<>();
            owed.forEach((item, by) -> {
                if (by == a.correction()) {
                    about.add(item.n());
                }
            });
            owed.keySet().removeIf(item -> about.contains(item.n()));
        }
        if (fact instanceof ReproductionTried now && any(ReproductionTried.class)) {
            reproducedAgain(now, stamp);
        }
        takePart(fact, stamp);
        stamps.add(stamp);
        items.add(new Item(stamp.entry(), fact, round, stamp, stamp.entry(), stamp.roles()));
        if (fact instanceof Opened o) {
            assignee = String.valueOf(o.assignee());
            assigneeRoles = o.assigneeRoles();
        } else if (fact instanceof HandedOver h) {
            assignee = h.to();
            assigneeRoles = h.toRoles();
        } else if (fact instanceof Advanced) {
            path.add(step);
            step = Step.values()[step.ordinal() + 1];
        } else if (fact instanceof RuledOut || fact instanceof VerifyFailed) {
            back(fact instanceof RuledOut, stamp);
        } else if (fact instanceof Rethought r) {
            back(r.theoryWrong(), stamp);
        } else if (fact instanceof Held || fact instanceof Resumed) {
            held = fact instanceof Held;
        } else if (fact instanceof Closed) {
            standing = "closed";
        } else if (fact instanceof Cancelled) {
            standing = "cancelled";
        } else if (fact instanceof Reopened) {
            standing = "open";
            held = false;
            step = Step.IDENTIFY;
            path.clear();
            round++;
            roundStart = stamp.entry();
            openedAt = stamp.entry();
        }
    }

    private void correct(Corrected c, Stamp stamp) {
        for (int i = 0; i < items.size(); i++) {
            Item old = items.get(i);
            if (old.n() == c.entry() && !slip(old, stamp)) {
                owed.replaceAll((item, by) -> item.n() == old.n() ? stamp.entry() : by);
                owed.put(old, stamp.entry());
            }
            if (old.n() == c.entry() && c.replacement() == null) {
                items.remove(i);
                return;
            } else if (old.n() == c.entry()) {
                items.set(i, new Item(old.n(), c.replacement(), old.round(), old.by(), stamp.entry(), stamp.roles()));
                return;
            }
        }
    }

    private void reproducedAgain(ReproductionTried now, Stamp stamp) {
        Item before = last(all(ReproductionTried.class, r -> true));
        if (now.outcome() == Reproduction.INTERMITTENT) {
            owed.keySet().removeIf(i -> i.fact() instanceof ReproductionTried);
        } else if (((ReproductionTried) before.fact()).outcome() == Reproduction.INTERMITTENT && !slip(before, stamp)) {
            owed.put(before, stamp.entry());
        }
    }

    private boolean slip(Item old, Stamp stamp) {
        return round == 1
                && step == Step.IDENTIFY
                && stamps.stream().filter(s -> s.entry() >= old.n()).allMatch(s -> s.by().equals(stamp.by()));
    }

    private void takePart(Fact fact, Stamp stamp) {
        if (judging(fact)) {
            judges.add(stamp.by());
        }
        if (working(fact, stamp)) {
            hands.computeIfAbsent(stamp.by(), a -> new HashSet<>()).addAll(stamp.roles());
        }
    }

    private static boolean judging(Fact fact) {
        return fact instanceof Waived
                || fact instanceof PlanApproved
                || fact instanceof PlanDeclined
                || fact instanceof PartOverrideApproved
                || fact instanceof LesseningAgreed
                || fact instanceof SentBack
                || fact instanceof AddendumCountersigned
                || (fact instanceof Signed s && s.signatory() == Signatory.MENTOR);
    }

    private boolean working(Fact fact, Stamp stamp) {
        if (fact instanceof Corrected c) {
            return c.replacement() != null && working(c.replacement(), stamp);
        }
        if (fact instanceof IdentifyFact) {
            return stamp.by().equals(assignee);
        }
        boolean moved = fact instanceof Advanced
                || fact instanceof RuledOut
                || fact instanceof Rethought
                || fact instanceof VerifyFailed
                || fact instanceof Closed;
        return moved || (!(fact instanceof DeskFact) && !judging(fact));
    }

    /** All that stands of a kind, and what was owed before it was corrected. */
    private List<Item> owing(Class<? extends Fact> kind) {
        List<Item> all = new ArrayList<>(all(kind, i -> true));
        owed.keySet().stream().filter(i -> kind.isInstance(i.fact())).forEach(all::add);
        return all;
    }

    private void back(boolean wrong, Stamp stamp) {
        if (wrong) {
            refuted.add(theory());
        }
        path.subList(1, path.size()).clear();
        step = Step.THEORIZE;
        round++;
        roundStart = stamp.entry();
    }

    private void judge(Entry entry) {
        Fact fact = entry.fact();
        Stamp stamp = entry.stamp();
        assertEquals(items.isEmpty() ? 1 : items.size() + struck() + 1, stamp.entry());
        if (fact instanceof Refused) {
            return;
        }
        assertFalse(standing.equals("cancelled"), "nothing follows a cancellation");
        boolean papers = fact instanceof Addendum || fact instanceof AddendumCountersigned;
        assertEquals(standing.equals("closed"), fact instanceof Reopened || papers, "what a closed ticket takes");
        boolean hand = hands.containsKey(stamp.by()) || stamp.by().equals(assignee);
        assertFalse(judging(fact) && hand, "4: who judges has not worked");
        assertFalse(working(fact, stamp) && judges.contains(stamp.by()), "4: who works has not judged");
        if (fact instanceof Waived w) {
            assertTrue(WAIVABLE.contains(w.requirement()), () -> w.requirement() + " is none of WAIVABLE here");
            assertTrue(stamp.roles().contains(Role.SUPERVISOR));
        } else if (fact instanceof LesseningAgreed) {
            assertTrue(stamp.roles().contains(Role.SUPERVISOR));
        } else if (fact instanceof HandedOver h) {
            boolean takes = h.to().equals(stamp.by());
            assertTrue(stamp.roles().contains(Role.SUPERVISOR) || takes, "handed over by who does not take it");
            assertFalse(judges.contains(h.to()), "given to who has judged");
        } else if (fact instanceof Signed s && s.signatory() == Signatory.MENTOR) {
            assertTrue(stamp.roles().contains(Role.MENTOR) && !stamp.roles().contains(Role.TRAINEE));
        } else if (fact instanceof ResultRecorded r) {
            result(r, stamp);
        } else if (fact instanceof ActionSettled s && s.settlement() != Settlement.NOT_NEEDED) {
            assertFalse(stopped(), "carried out while work is stopped");
            carrying(stamp.at());
        } else if (fact instanceof MoveFact move) {
            move(move, stamp);
        }
    }

    private int struck() {
        return (int) items.stream()
                .filter(i -> i.fact() instanceof Corrected c && c.replacement() == null)
                .count();
    }

    private void result(ResultRecorded r, Stamp stamp) {
        Item check = one(CheckPlanned.class, r.check());
        assertTrue(check.since() < stamp.entry(), "expectation later than the result");
        assertFalse(stopped(), "a check while work is stopped");
        CheckPlanned planned = (CheckPlanned) check.fact();
        assertTrue(cautions(check, stamp.entry()).containsAll(planned.cautions()), "cautions of the check");
        if (planned.invasive()) {
            met("data-protected", data());
        }
    }

    private void move(MoveFact move, Stamp stamp) {
        boolean own = stamp.by().equals(assignee);
        boolean steps = move.move().changesStep();
        assertFalse(steps && (held || stopped() || !own), () -> "held, stopped or not the assignee's: " + move);
        if (move instanceof Advanced) {
            assertFalse(step == Step.DOCUMENT, "no step follows document");
            gate(stamp, CheckOutcome.SUPPORTS);
        } else if (move instanceof RuledOut) {
            assertEquals(Step.TEST, step);
            gate(stamp, CheckOutcome.REFUTES);
        } else if (move instanceof Rethought) {
            assertEquals(Step.PLAN, step);
        } else if (move instanceof VerifyFailed) {
            assertTrue(step == Step.VERIFY || step == Step.DOCUMENT);
        } else if (move instanceof Closed) {
            assertEquals(List.of(Step.values()).subList(0, 5), path, "all steps in order");
            assertEquals(Step.DOCUMENT, step);
            gate(stamp, CheckOutcome.SUPPORTS);
        } else if (move instanceof Cancelled c) {
            assertTrue(stamp.roles().contains(Role.SUPERVISOR) || (own && c.duplicateOf() != null));
        }
    }

    private void gate(Stamp stamp, CheckOutcome wanted) {
        if (failing() > 0) {
            met("data-protected", data());
        }
        switch (step) {
            case IDENTIFY -> identify();
            case THEORIZE -> theorize();
            case TEST -> test(wanted);
            case PLAN -> plan(stamp);
            case VERIFY -> verify();
            case DOCUMENT -> {
                verify();
                document();
            }
        }
    }

    private void identify() {
        met("symptom-observed", !all(SymptomRecorded.class, again()).isEmpty());
        met("onset-known", any(OnsetRecorded.class));
        met("changes-asked", any(ChangesAsked.class));
        met("scope-known", any(ScopeRecorded.class));
        met("reproduced", any(ReproductionTried.class));
        met("hazards-screened", !all(HazardsScreened.class, again()).isEmpty());
        met("data-protected", data());
        met(
                "evidence-attached",
                Stream.of(ReadingRecorded.class, ExtractRecorded.class, AttachmentAdded.class, EvidenceImpossible.class)
                        .anyMatch(kind -> !all(kind, again()).isEmpty()));
        met("logs-reviewed", any(LogsReviewed.class));
        met("likeness-checked", any(LikenessChecked.class));
    }

    private Predicate<Item> again() {
        return i -> i.n() > openedAt;
    }

    private void theorize() {
        met("simple-things-first", any(ObviousQuestioned.class));
        TheoryStated active = theory();
        TheoryChosen choice = (TheoryChosen)
                last(all(TheoryChosen.class, c -> c.round() == round)).fact();
        boolean before = refuted.stream()
                .anyMatch(t -> t.text().equalsIgnoreCase(active.text())
                        || (t.causeId() != null && t.causeId().equals(active.causeId())));
        met("not-already-refuted", !before || !choice.newEvidence().isEmpty());
    }

    private void test(CheckOutcome wanted) {
        int active = ((TheoryChosen)
                        last(all(TheoryChosen.class, c -> c.round() == round)).fact())
                .theory();
        CheckOutcome found = null;
        for (Item r : all(ResultRecorded.class, r -> r.round() == round)) {
            ResultRecorded result = (ResultRecorded) r.fact();
            CheckPlanned check =
                    (CheckPlanned) one(CheckPlanned.class, result.check()).fact();
            if (check.theory() == active && !check.expectation().isEmpty() && result.check() < r.n()) {
                found = result.outcome() == CheckOutcome.INCONCLUSIVE ? found : result.outcome();
            }
        }
        assertEquals(wanted, found, "the latest conclusive check");
    }

    private void plan(Stamp stamp) {
        carrying(stamp.at());
        boolean carried = false;
        for (Item action : all(ActionPlanned.class, a -> a.round() == round)) {
            Settlement how = settlement(action).settlement();
            assertFalse(how == Settlement.FAILED, "a failed action");
            carried |= how == Settlement.CARRIED_OUT;
        }
        assertTrue(carried, "nothing carried out");
    }

    /** What has to hold before an action is carried out, and again when the step is left. */
    private void carrying(Instant now) {
        List<Item> actions = all(
                ActionPlanned.class,
                a -> a.round() == round
                        && all(
                                        ActionSettled.class,
                                        s -> ((ActionSettled) s.fact()).action() == a.n()
                                                && ((ActionSettled) s.fact()).settlement() == Settlement.NOT_NEEDED)
                                .isEmpty());
        met(
                "maker-consulted",
                !all(MakerConsulted.class, m -> m.round() == round).isEmpty());
        BigDecimal cost = BigDecimal.ZERO;
        boolean asks = false;
        for (Item item : actions) {
            ActionPlanned a = (ActionPlanned) item.fact();
            cost = cost.add(a.cost() == null ? BigDecimal.ZERO : new BigDecimal(a.cost()));
            asks |= a.irreversible()
                    || a.highRisk()
                    || a.severalDevices()
                    || item.as().contains(Role.TRAINEE)
                    || item.by().roles().contains(Role.TRAINEE);
            met("parts-fit", a.part() == null || fits(item));
            List<Item> done = all(ActionSettled.class, s -> ((ActionSettled) s.fact()).action() == item.n());
            int until = done.isEmpty() ? Integer.MAX_VALUE : done.get(0).n();
            Instant when = done.isEmpty() ? now : done.get(0).by().at();
            assertTrue(cautions(item, until).containsAll(a.cautions()), "cautions of the action");
            met("data-still-protected", !a.touchesStorage() || fresh(when));
        }
        for (Item item : all(ActionPlanned.class, a -> a.round() != round)) {
            ActionPlanned a = (ActionPlanned) item.fact();
            boolean done = !all(
                            ActionSettled.class,
                            s -> ((ActionSettled) s.fact()).action() == item.n()
                                    && ((ActionSettled) s.fact()).settlement() != Settlement.NOT_NEEDED)
                    .isEmpty();
            cost = done && !actions.isEmpty() && a.cost() != null ? cost.add(new BigDecimal(a.cost())) : cost;
        }
        if (asks || cost.compareTo(policy.approvalCostLimit()) > 0) {
            Item approval = last(all(PlanApproved.class, p -> p.round() == round));
            assertTrue(all(PlanDeclined.class, d -> d.n() > approval.n()).isEmpty(), "declined");
            for (Item action : actions) {
                assertTrue(((PlanApproved) approval.fact()).actions().contains(action.n()), "approved by name");
                assertTrue(action.since() < approval.n(), "changed after its approval");
            }
        }
    }

    private boolean fits(Item action) {
        List<Item> checks = all(PartFitChecked.class, f -> ((PartFitChecked) f.fact()).action() == action.n());
        boolean fits = !checks.isEmpty()
                && last(checks).n() > action.since()
                && ((PartFitChecked) last(checks).fact()).fit() != Fit.DOES_NOT_FIT;
        return fits
                || !all(
                                PartOverrideApproved.class,
                                o -> ((PartOverrideApproved) o.fact()).action() == action.n() && o.n() > action.since())
                        .isEmpty();
    }

    private boolean fresh(Instant when) {
        return !all(
                        DataAnswered.class,
                        d -> !d.by().at().isAfter(when)
                                && Duration.between(d.by().at(), when).compareTo(policy.dataAnswerMaxAge()) <= 0)
                .isEmpty();
    }

    private void verify() {
        int work = last(all(
                        ActionSettled.class,
                        a -> a.round() == round && ((ActionSettled) a.fact()).settlement() != Settlement.NOT_NEEDED))
                .n();
        assertTrue(work > roundStart);
        assertTrue(any(SymptomRecorded.class));
        boolean intermittent =
                owing(SymptomRecorded.class).stream().anyMatch(s -> ((SymptomRecorded) s.fact()).intermittent())
                        || owed.keySet().stream().anyMatch(i -> i.fact() instanceof ReproductionTried)
                        || (any(ReproductionTried.class)
                                && ((ReproductionTried) last(all(ReproductionTried.class, r -> true))
                                                        .fact())
                                                .outcome()
                                        == Reproduction.INTERMITTENT);
        for (Item symptom : owing(SymptomRecorded.class)) {
            Item recheck =
                    last(all(SymptomRechecked.class, r -> ((SymptomRechecked) r.fact()).symptom() == symptom.n()));
            assertTrue(recheck.n() > work && ((SymptomRechecked) recheck.fact()).gone(), "symptom gone");
        }
        met("readings-back", back(work));
        List<Item> functions = all(FunctionChecked.class, f -> f.n() > work);
        Category category = ((Opened) items.get(0).fact()).category();
        Map<String, ItemState> states = functions.isEmpty()
                ? Map.of()
                : Objects.requireNonNull(((FunctionChecked) last(functions).fact()).answers());
        met(
                "function-checked",
                states.containsValue(ItemState.WORKS)
                        && !states.containsValue(ItemState.FAULTY)
                        && states.size() >= category.functions().size());
        List<Item> answers = all(RequesterAnswered.class, r -> r.n() > work);
        met("requester-agrees", !answers.isEmpty() && !disagrees());
        met("prevention-considered", any(PreventionConsidered.class));
        List<Item> runs = all(SoakRun.class, r -> r.n() > work);
        long minutes =
                runs.stream().mapToLong(r -> ((SoakRun) r.fact()).minutes()).sum();
        boolean recurred = runs.stream().anyMatch(r -> ((SoakRun) r.fact()).recurred());
        met(
                "soak-time-passed",
                !intermittent || (!recurred && minutes >= policy.soakTime().toMinutes()));
    }

    /** Whether the requester disagreed, and has not agreed since. */
    private boolean disagrees() {
        boolean open = false;
        for (Item item : all(RequesterAnswered.class, r -> true)) {
            RequesterState state = ((RequesterAnswered) item.fact()).state();
            open = state == RequesterState.DISAGREES || (open && state != RequesterState.AGREES);
        }
        return open;
    }

    /** All readings of the walks are in one unit and say no accuracy. */
    private boolean back(int work) {
        for (Item item : owing(ReadingRecorded.class)) {
            ReadingRecorded r = (ReadingRecorded) item.fact();
            if (!holds(r, r)) {
                List<Item> again = all(
                        ReadingRecorded.class,
                        x -> place((ReadingRecorded) x.fact()).equals(place(r)));
                if (again.isEmpty()
                        || last(again).n() <= work
                        || !holds((ReadingRecorded) last(again).fact(), r)) {
                    return false;
                }
            }
        }
        return true;
    }

    private static String place(ReadingRecorded r) {
        return (r.quantity() + "|" + r.point()).toLowerCase(Locale.ROOT);
    }

    private static boolean holds(ReadingRecorded r, ReadingRecorded limited) {
        BigDecimal value = new BigDecimal(r.value());
        return (limited.lower() == null || value.compareTo(new BigDecimal(limited.lower())) >= 0)
                && (limited.upper() == null || value.compareTo(new BigDecimal(limited.upper())) <= 0);
    }

    private void document() {
        met("cause-named", !all(CauseNamed.class, c -> c.round() == round).isEmpty());
        int summary = last(all(SummaryWritten.class, s -> s.round() == round)).n();
        int changed = Stream.of(CauseNamed.class, SummaryWritten.class, KnowledgeLinked.class, EffortRecorded.class)
                .flatMap(kind -> all(kind, k -> k.round() == round).stream())
                .mapToInt(Item::since)
                .reduce(summary, Math::max);
        int back = all(SentBack.class, b -> true).stream().mapToInt(Item::n).reduce(0, Math::max);
        assertTrue(
                all(Signed.class, s -> s.n() > changed).stream()
                        .anyMatch(s -> s.by().by().equals(assignee)),
                "signed");
        Predicate<Item> after = s -> s.n() > Math.max(changed, back);
        if (assigneeRoles.contains(Role.TRAINEE)
                || hands.values().stream().anyMatch(roles -> roles.contains(Role.TRAINEE))) {
            assertTrue(
                    all(Signed.class, after).stream()
                            .anyMatch(s -> ((Signed) s.fact()).signatory() == Signatory.MENTOR),
                    "signed by a mentor");
        }
        met(
                "knowledge-linked",
                !all(KnowledgeLinked.class, k -> k.round() == round).isEmpty());
        met(
                "effort-recorded",
                !all(EffortRecorded.class, k -> k.round() == round).isEmpty());
    }

    private void met(String code, boolean holds) {
        ASKED.add(code);
        boolean waived = WAIVABLE.contains(code)
                && items.stream()
                        .anyMatch(i -> i.fact() instanceof Waived w
                                && w.requirement().equals(code)
                                && (OF_IDENTIFY.contains(code) ? i.n() > openedAt : i.round() == round)
                                && i.n() > knownSince(code)
                                && !hands.containsKey(i.by().by()));
        assertTrue(holds || waived, () -> "left " + step + " without " + code);
    }

    /** Entry since which whoever waives that knows what there is to know. */
    private int knownSince(String code) {
        return switch (code) {
            case "data-protected" -> Math.max(failing(), latest(DataAnswered.class, d -> true));
            case "not-already-refuted" -> latest(TheoryChosen.class, c -> c.round() == round);
            case "readings-back" ->
                owing(ReadingRecorded.class).stream()
                        .filter(i -> !holds((ReadingRecorded) i.fact(), (ReadingRecorded) i.fact()))
                        .mapToInt(Item::since)
                        .reduce(0, Math::max);
            case "function-checked" -> latest(FunctionChecked.class, f -> true);
            case "requester-agrees" ->
                latest(
                        RequesterAnswered.class,
                        r -> ((RequesterAnswered) r.fact()).state() == RequesterState.DISAGREES);
            case "soak-time-passed" -> latest(SoakRun.class, r -> ((SoakRun) r.fact()).recurred());
            default -> 0;
        };
    }

    private int latest(Class<? extends Fact> kind, Predicate<Item> which) {
        return all(kind, which).stream().mapToInt(Item::n).reduce(0, Math::max);
    }

    private boolean stopped() {
        boolean stopped = false;
        for (Item item : items) {
            if (item.fact() instanceof HazardsScreened h && h.present().containsValue(true)) {
                stopped = true;
            } else if (item.fact() instanceof StopWorkCleared) {
                stopped = false;
            }
        }
        return stopped;
    }

    private boolean data() {
        List<Item> answers = all(DataAnswered.class, again());
        if (answers.isEmpty()) {
            return false;
        }
        DataState state = ((DataAnswered) last(answers).fact()).state();
        return (failing() == 0 && state != DataState.NOT_YET)
                || state == DataState.BACKUP_VERIFIED
                || state == DataState.TAKEN_NOW;
    }

    /** Entry since which a drive is known to fail; 0 if none does. */
    private int failing() {
        return owing(FindingRecorded.class).stream()
                .filter(i -> ((FindingRecorded) i.fact()).driveFailure())
                .mapToInt(Item::since)
                .min()
                .orElse(0);
    }

    private Set<Caution> cautions(Item about, int before) {
        Set<Caution> taken = new HashSet<>();
        for (Item item : items) {
            if (item.fact() instanceof CautionsAcknowledged a
                    && isOneWork(a.about(), about)
                    && item.n() > about.since()
                    && item.n() < before) {
                taken.addAll(a.cautions());
            }
        }
        return taken;
    }

    /** The checks of a round are one piece of work, and so are its actions. */
    private boolean isOneWork(int acknowledged, Item about) {
        return acknowledged == about.n()
                || items.stream()
                        .anyMatch(i -> i.n() == acknowledged
                                && i.round() == about.round()
                                && i.fact().getClass() == about.fact().getClass());
    }

    private ActionSettled settlement(Item action) {
        return (ActionSettled) last(all(ActionSettled.class, s -> ((ActionSettled) s.fact()).action() == action.n()))
                .fact();
    }

    private TheoryStated theory() {
        int chosen = ((TheoryChosen)
                        last(all(TheoryChosen.class, c -> c.round() == round)).fact())
                .theory();
        return (TheoryStated) one(TheoryStated.class, chosen).fact();
    }

    private Item one(Class<? extends Fact> kind, int n) {
        return last(all(kind, i -> i.n() == n));
    }

    private boolean any(Class<? extends Fact> kind) {
        return !all(kind, i -> true).isEmpty();
    }

    private List<Item> all(Class<? extends Fact> kind, Predicate<Item> which) {
        return items.stream()
                .filter(i -> kind.isInstance(i.fact()) && which.test(i))
                .toList();
    }

    private static Item last(List<Item> list) {
        assertFalse(list.isEmpty(), "what the move stands on is not in the trail");
        return list.get(list.size() - 1);
    }
}
