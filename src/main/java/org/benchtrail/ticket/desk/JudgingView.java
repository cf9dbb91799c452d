package org.benchtrail.ticket.desk;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.AddendumCountersigned;
import org.benchtrail.core.method.desk.AskKind;
import org.benchtrail.core.method.desk.Asked;
import org.benchtrail.core.method.desk.Asks;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.ticket.Viewing;
import org.jspecify.annotations.Nullable;

/**
 * What passes between who works on a ticket and who judges that work.
 *
 * @param trainee whether a trainee is among those who worked on it
 * @param approvable whether the plan needs an approval that nobody has asked for
 * @param mentorAsked whether a mentor was asked for and has not answered
 * @param asks what was asked for and not answered
 * @param offer null if the ticket is offered to nobody
 * @param sentBack why a mentor sent it back; null if none did since the assignee signed
 * @param reopened why it was opened again; null if it was not
 */
public record JudgingView(
        boolean trainee,
        boolean approvable,
        boolean mentorAsked,
        List<LesseningView> lessenings,
        List<AskView> asks,
        Remarks remarks,
        List<AddendumView> addenda,
        @Nullable OfferView offer,
        @Nullable Told sentBack,
        @Nullable Told reopened) {

    /** What was said, who said it, and when. */
    public record Told(String words, String stamp) {}

    /** @param what such as "a waiver", with the requirement that it is about */
    public record AskView(int entry, AskKind kind, String code, String what, String note, String stamp) {}

    /**
     * @param requirement title of the one that it is about; empty if it is about none
     * @param countersigned by whom and when; empty if nobody has yet
     * @param mentors whether only mentors countersign it, and the viewer is none
     */
    public record AddendumView(
            int entry,
            String about,
            String requirement,
            String text,
            String stamp,
            String countersigned,
            boolean mentors) {}

    public static JudgingView of(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        List<AskView> asks =
                Asks.waiting(sheet).stream().map(a -> asked(a, viewing)).toList();
        return new JudgingView(
                sheet.workedBy(Role.TRAINEE),
                !Method.approvalReasons(sheet, viewing.policy()).isEmpty() && !isAsked(asks, AskKind.APPROVAL),
                isAsked(asks, AskKind.MENTOR),
                LesseningView.all(viewing),
                asks,
                Remarks.of(sheet, viewing::stamp),
                sheet.all(Addendum.class).stream().map(a -> added(a, viewing)).toList(),
                OfferView.of(viewing).orElse(null),
                sentBack(viewing).orElse(null),
                reopened(viewing).orElse(null));
    }

    /** Whether that waiver was asked for and waits. */
    public boolean isWaiverAsked(String code) {
        return asks.stream()
                .anyMatch(a -> a.kind() == AskKind.WAIVER && a.code().equals(code));
    }

    /** What is owed on as an entry was first recorded; none unless a change of it waits. */
    public List<LesseningView> lessened(int entry) {
        return lessenings.stream().filter(l -> l.entry() == entry).toList();
    }

    private static boolean isAsked(List<AskView> asks, AskKind what) {
        return asks.stream().anyMatch(a -> a.kind() == what);
    }

    private static AskView asked(StandingFact<Asked> asked, Viewing viewing) {
        Asked fact = asked.fact();
        String code = Objects.requireNonNullElse(fact.requirement(), "");
        String of = Requirements.of(code).map(Requirement::title).orElse(code);
        return new AskView(
                asked.entry(),
                fact.what(),
                code,
                fact.what().words() + (of.isEmpty() ? "" : ": " + of),
                fact.note(),
                viewing.stamp(asked));
    }

    private static AddendumView added(StandingFact<Addendum> added, Viewing viewing) {
        return new AddendumView(
                added.entry(),
                added.fact().about().words(),
                Requirements.of(Objects.requireNonNullElse(added.fact().requirement(), ""))
                        .map(Requirement::title)
                        .orElse(""),
                added.fact().text(),
                viewing.stamp(added),
                viewing.sheet()
                        .latest(AddendumCountersigned.class, c -> c.fact().addendum() == added.entry())
                        .map(viewing::stamp)
                        .orElse(""),
                AddendumCountersigned.isTrainees(viewing.sheet(), added.entry())
                        && !viewing.viewer().is(Role.MENTOR));
    }

    private static Optional<Told> sentBack(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        int signed = sheet.latest(Signed.class, s -> s.fact().signatory() == Signatory.ASSIGNEE)
                .map(StandingFact::entry)
                .orElse(0);
        return sheet.latest(
                        SentBack.class, s -> s.isAfter(signed) && sheet.course().isOpen())
                .map(s -> new Told(s.fact().reason(), viewing.stamp(s)));
    }

    private static Optional<Told> reopened(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        return sheet.latest(Reopened.class, r -> r.entry() == sheet.course().openedAt())
                .map(r -> new Told(r.fact().reason(), viewing.stamp(r)));
    }
}
