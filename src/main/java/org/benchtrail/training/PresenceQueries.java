package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.MentorPresent;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.core.method.desk.PresenceSigned;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.PresenceNote;
import org.benchtrail.ticket.TicketQueries;

/** What is asked of a mentor before a trainee does something dangerous, read in one transaction. */
@ApplicationScoped
class PresenceQueries {
    private final TicketQueries tickets;
    private final Directory people;
    private final Clock clock;

    PresenceQueries(TicketQueries tickets, Directory people, Clock clock) {
        this.tickets = tickets;
        this.people = people;
        this.clock = clock;
    }

    /** @throws NotFound if that entry is no check, no action, and not the first one */
    @Transactional
    PresenceView view(TicketNumber number, int about, Actor viewer, ZoneId zone) {
        JobSheet sheet = tickets.ticket(number, viewer).sheet();
        DangerousAct planned = DangerousAct.of(sheet, about)
                .orElseThrow(() -> new NotFound("check or action " + about + " on ticket " + number));
        String assignee = sheet.course().assigneeRoles().contains(Role.TRAINEE)
                ? Objects.requireNonNullElse(sheet.course().assignee(), "")
                : "";
        String login = people.mentorOf(assignee);
        Optional<StandingFact<PresenceSigned>> last =
                sheet.latest(PresenceSigned.class, p -> p.fact().about() == about);
        Map<String, String> names = people.names(
                List.of(assignee, login, last.map(p -> p.stamp().by()).orElse("")));
        boolean open = MentorPresent.open(sheet, about, assignee, clock.instant())
                .filter(p -> p.fact().about() == about)
                .isPresent();
        return new PresenceView(
                number.toString(),
                sheet.opened().title(),
                sheet.entries(),
                about,
                planned.what(),
                planned.cautions().stream().map(Caution::title).toList(),
                names.getOrDefault(assignee, ""),
                names.getOrDefault(login, ""),
                login,
                last.filter(p -> open)
                        .map(p -> PresenceNote.here(
                                p, names.getOrDefault(p.stamp().by(), p.stamp().by()), zone))
                        .orElse(""),
                !open && !assignee.isEmpty() && MentorPresent.isToDo(sheet, about),
                last.filter(p -> !MentorPresent.isEnded(sheet, p.entry()))
                        .map(StandingFact::entry)
                        .orElse(0),
                last.map(p -> said(sheet, p.entry())).orElse(""));
    }

    private static String said(JobSheet sheet, int presence) {
        return sheet.latest(PresenceEnded.class, e -> e.fact().presence() == presence)
                .map(e -> (Boolean.TRUE.equals(e.fact().stayed()) ? "Stayed until it was done. " : "Did not stay. ")
                        + e.fact().saw())
                .orElse("");
    }
}
