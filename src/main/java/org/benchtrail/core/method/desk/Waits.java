package org.benchtrail.core.method.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Lessening;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.verify.SoakTime;

/** Whom a ticket waits for, and with what: it follows from the job sheet alone, so that it can be told anew at any time. */
public final class Waits {
    private final JobSheet sheet;
    private final Course course;
    private final List<Wait> found = new ArrayList<>();

    private Waits(JobSheet sheet) {
        this.sheet = sheet;
        course = sheet.course();
    }

    /** Also what waits only from a later moment on, each with that moment. */
    public static List<Wait> of(JobSheet sheet, Policy policy) {
        Waits waits = new Waits(sheet);
        if (waits.course.isOpen()) {
            waits.judging();
            waits.signing();
            waits.present();
            String assignee = waits.course.assignee();
            if (assignee != null) {
                waits.assignee(assignee, policy);
            }
            waits.offered();
        }
        waits.addenda();
        return List.copyOf(waits.found);
    }

    /** Who judges nothing on the ticket: all who have worked on it, and whoever has it. */
    public static Set<String> hands(JobSheet sheet) {
        Set<String> hands = new TreeSet<>(sheet.hands());
        if (sheet.course().assignee() != null) {
            hands.add(sheet.course().assignee());
        }
        return hands;
    }

    private void judging() {
        for (StandingFact<Asked> asked : Asks.waiting(sheet)) {
            AskKind what = asked.fact().what();
            boolean mentors = what == AskKind.MENTOR || (what == AskKind.APPROVAL && sheet.workedBy(Role.TRAINEE));
            found.add(Wait.ofRoles(what.waiting(), asked.stamp(), what != AskKind.MENTOR, mentors));
        }
        for (Lessening lessening : sheet.lessenings()) {
            found.add(Wait.ofRoles(WaitKind.LESSENING, lessening.by(), true, false));
        }
    }

    /** A trainee worked on it, its assignee has signed, and no mentor has answered that. */
    private void signing() {
        if (sheet.step() == Step.DOCUMENT && sheet.workedBy(Role.TRAINEE)) {
            signature(Signatory.ASSIGNEE)
                    .filter(signed -> signature(Signatory.MENTOR)
                                    .filter(mentor -> mentor.isAfter(signed.entry()))
                                    .isEmpty()
                            && none(SentBack.class, answer -> answer.isAfter(signed.entry())))
                    .ifPresent(signed -> found.add(Wait.ofRoles(WaitKind.SIGNATURE, signed.stamp(), false, true)));
        }
    }

    /** Whoever was present says afterwards whether they stayed and what they saw; nobody else can. */
    private void present() {
        sheet.all(
                        PresenceSigned.class,
                        p -> none(PresenceEnded.class, e -> e.fact().presence() == p.entry()))
                .forEach(p ->
                        found.add(at(WaitKind.PRESENCE, p.stamp(), p.stamp().person())));
    }

    private Optional<StandingFact<Signed>> signature(Signatory who) {
        return sheet.latest(
                Signed.class, s -> s.round() == sheet.round() && s.fact().signatory() == who);
    }

    private void assignee(String assignee, Policy policy) {
        sheet.latest(SentBack.class)
                .filter(back -> none(
                        Signed.class, s -> s.isAfter(back.entry()) && s.fact().signatory() == Signatory.ASSIGNEE))
                .ifPresent(back -> found.add(at(WaitKind.SENT_BACK, back.stamp(), assignee)));
        int last = sheet.latest(Fact.class, f -> f.stamp().person().equals(assignee))
                .map(StandingFact::entry)
                .orElse(0);
        sheet.all(Remarked.class, r -> r.isAfter(last))
                .forEach(r -> found.add(at(WaitKind.REMARK, r.stamp(), assignee)));
        SoakTime.ends(sheet, policy)
                .ifPresent(end -> found.add(Wait.of(
                        WaitKind.SOAK, SoakTime.running(sheet).orElseThrow().stamp(), assignee, end)));
        Hold hold = course.hold();
        if (hold != null) {
            sheet.latest(Held.class)
                    .ifPresent(held -> found.add(Wait.of(WaitKind.FOLLOW_UP, held.stamp(), assignee, hold.followUp())));
        }
    }

    private void offered() {
        String to = course.offered();
        if (to != null) {
            sheet.latest(HandOverOffered.class).ifPresent(offer -> found.add(at(WaitKind.OFFER, offer.stamp(), to)));
        }
    }

    private void addenda() {
        sheet.all(
                        Addendum.class,
                        a -> none(AddendumCountersigned.class, c -> c.fact().addendum() == a.entry()))
                .forEach(a -> found.add(Wait.ofRoles(
                        WaitKind.ADDENDUM, a.stamp(), !AddendumCountersigned.isTrainees(sheet, a.entry()), true)));
    }

    private <F extends Fact> boolean none(Class<F> kind, Predicate<StandingFact<F>> which) {
        return sheet.latest(kind, which).isEmpty();
    }

    private static Wait at(WaitKind kind, Stamp made, String account) {
        return Wait.of(kind, made, account, made.at());
    }
}
