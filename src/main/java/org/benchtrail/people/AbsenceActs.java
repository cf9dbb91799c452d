package org.benchtrail.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.platform.NotFound;
import org.jspecify.annotations.Nullable;

/** Noting that one is away, and taking it back. An administrator does it for somebody who cannot. */
@ApplicationScoped
@Transactional
class AbsenceActs {
    private static final int LONGEST_DAYS = 400;

    private final AbsenceRows rows;
    private final Accounts accounts;
    private final AccountLog log;
    private final Clock clock;

    AbsenceActs(AbsenceRows rows, Accounts accounts, AccountLog log, Clock clock) {
        this.rows = rows;
        this.accounts = accounts;
        this.log = log;
        this.clock = clock;
    }

    /**
     * Notes an absence of whole days in the zone of whoever is away; one that it overlaps is replaced by it.
     *
     * @param first its first day, as {@code 2026-12-01}
     * @param last its last day
     */
    void note(Actor by, String login, String first, String last, String delegate) {
        Account account = allowed(by, login);
        Optional<LocalDate> from = day(first);
        Optional<LocalDate> until = day(last);
        Instant now = clock.instant();
        LocalDate today = now.atZone(account.zoneId()).toLocalDate();
        new Invalid.Collector()
                .require(from.isPresent(), "first", "Give the first day that you are away.")
                .require(
                        until.filter(day -> !day.isBefore(today)).isPresent(),
                        "last",
                        "Give the last day that you are away, today or later.")
                .require(
                        from.isEmpty() || until.isEmpty() || !until.get().isBefore(from.get()),
                        "last",
                        "The last day comes after the first one.")
                .require(
                        from.isEmpty()
                                || until.isEmpty()
                                || until.get().isBefore(from.get().plusDays(LONGEST_DAYS)),
                        "last",
                        "Note at most " + LONGEST_DAYS + " days.")
                .throwIfAny();
        Instant begins = start(from.orElseThrow(), account.zoneId());
        Instant ends = start(until.orElseThrow().plusDays(1), account.zoneId());
        checkDelegate(account, delegate, begins, ends);
        rows.from(login, now).stream()
                .filter(other -> overlaps(other, begins, ends))
                .forEach(other -> other.withdrawn = now);
        Absence absence = new Absence();
        absence.account = login;
        absence.begins = begins;
        absence.ends = ends;
        absence.delegate = delegate;
        absence.noted = now;
        absence.notedBy = by.account();
        rows.persist(absence);
        log.note(by.account(), "absence noted", login, first + " to " + last + ", " + delegate + " stands in");
    }

    /** Takes an absence back, or ends it early. */
    void withdraw(Actor by, String login, long id) {
        allowed(by, login);
        Instant now = clock.instant();
        Absence absence = rows.from(login, now).stream()
                .filter(a -> a.id != null && a.id == id)
                .findFirst()
                .orElseThrow(() -> new NotFound("absence " + id + " of " + login + " that could be ended"));
        absence.withdrawn = now;
        log.note(by.account(), "absence ended", login, "");
    }

    private void checkDelegate(Account account, String delegate, Instant begins, Instant ends) {
        @Nullable
        Account other = accounts.byLogin(delegate).filter(a -> a.active).orElse(null);
        new Invalid.Collector()
                .require(
                        other != null
                                && !delegate.equals(account.login)
                                && other.actor().works(),
                        "delegate",
                        "Choose somebody else who works on tickets.")
                .require(
                        other == null || rows.from(delegate, begins).stream().noneMatch(a -> overlaps(a, begins, ends)),
                        "delegate",
                        "They are away then, too: choose somebody else.")
                .throwIfAny();
    }

    private Account allowed(Actor by, String login) {
        if (!by.account().equals(login)) {
            Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        }
        return accounts.lockedByLogin(login).orElseThrow(() -> new NotFound("account " + login));
    }

    private static boolean overlaps(Absence absence, Instant begins, Instant ends) {
        return absence.begins.isBefore(ends) && absence.ends.isAfter(begins);
    }

    private static Optional<LocalDate> day(String typed) {
        try {
            return Optional.of(LocalDate.parse(typed)).filter(d -> d.getYear() >= 2000 && d.getYear() <= 9000);
        } catch (DateTimeParseException none) {
            return Optional.empty();
        }
    }

    private static Instant start(LocalDate day, ZoneId zone) {
        return day.atStartOfDay(zone).toInstant();
    }

    /** The absences of an account that go on or are to come. */
    List<Absence> of(String login) {
        return rows.from(login, clock.instant());
    }
}
