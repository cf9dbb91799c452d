package org.benchtrail.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;

/** Who is who, for the other features: names to show, and who works on tickets. */
@ApplicationScoped
@Transactional
public class Directory {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

    private final Accounts accounts;
    private final Absences absences;

    Directory(Accounts accounts, Absences absences) {
        this.accounts = accounts;
        this.absences = absences;
    }

    /** The person behind an account that is active and works on tickets. */
    public Optional<Actor> worker(String login) {
        return accounts.byLogin(login).filter(a -> a.active).map(Account::actor).filter(Actor::works);
    }

    /** Everybody who is active and works on tickets, by name. */
    public List<Actor> workers() {
        return accounts.active().stream()
                .map(Account::actor)
                .filter(Actor::works)
                .toList();
    }

    /** As {@link #workers}, with who is away named so: until when, and who stands in. */
    public List<Actor> takers(Instant now) {
        Map<String, Absence> away = absences.delegates(now);
        List<Account> active = accounts.active();
        Map<String, String> names = active.stream().collect(Collectors.toMap(a -> a.login, a -> a.displayName));
        return active.stream()
                .filter(account -> account.actor().works())
                .map(account -> taker(account, away, names))
                .toList();
    }

    private static Actor taker(Account account, Map<String, Absence> away, Map<String, String> names) {
        Absence absence = away.get(account.login);
        if (absence == null) {
            return account.actor();
        }
        String last = DAY.format(absence.ends.atZone(account.zoneId()).minusDays(1));
        String standsIn = Absences.standsIn(account.login, away)
                .map(login -> names.getOrDefault(login, login) + " stands in")
                .orElse("nobody stands in");
        return new Actor(
                account.login, account.displayName + " (away until " + last + ", " + standsIn + ")", account.roles());
    }

    /** The active trainees whose mentor that is, by name; none for who is no mentor any more. */
    public List<Actor> traineesOf(String mentor) {
        return isMentor(mentor)
                ? accounts.active().stream()
                        .filter(a -> mentor.equals(a.mentor) && a.roles().contains(Role.TRAINEE))
                        .map(Account::actor)
                        .toList()
                : List.of();
    }

    /** Login of the mentor whom that trainee has now; empty if they have none. */
    public String mentorOf(String trainee) {
        return accounts.byLogin(trainee)
                .flatMap(account -> Optional.ofNullable(account.mentor))
                .filter(this::isMentor)
                .orElse("");
    }

    private boolean isMentor(String login) {
        return accounts.byLogin(login)
                .filter(a -> a.active && a.roles().contains(Role.MENTOR))
                .isPresent();
    }

    /** Everybody who is active and has that permission, by name. */
    public List<Actor> allowed(Permission permission) {
        return accounts.active().stream()
                .map(Account::actor)
                .filter(actor -> Permissions.allow(permission, actor))
                .toList();
    }

    /** Names by account, of active and closed accounts alike; what is no account is not among them. */
    public Map<String, String> names(Collection<String> logins) {
        return accounts.byLogins(logins).stream().collect(Collectors.toMap(a -> a.login, a -> a.displayName));
    }

    /** Names by account, of everybody there ever was. */
    public Map<String, String> names() {
        return accounts.listAll().stream().collect(Collectors.toMap(a -> a.login, a -> a.displayName));
    }

    public boolean knows(String login) {
        return accounts.byLogin(login).isPresent();
    }
}
