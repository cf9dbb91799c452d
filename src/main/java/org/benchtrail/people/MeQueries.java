package org.benchtrail.people;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** What the page of one's own account shows, read in one transaction. */
@Startup
@ApplicationScoped
@Transactional
class MeQueries {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm VV", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    private final Accounts accounts;
    private final ApiTokens tokens;
    private final SessionStore sessions;
    private final AbsenceActs absences;
    private final Absences away;
    private final EntityManager database;
    private final Clock clock;
    private final SqlText text;

    MeQueries(
            Accounts accounts,
            ApiTokens tokens,
            SessionStore sessions,
            AbsenceActs absences,
            Absences away,
            EntityManager database,
            Clock clock) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.sessions = sessions;
        this.absences = absences;
        this.away = away;
        this.database = database;
        this.clock = clock;
        text = SqlText.of(MeQueries.class).having("names before");
    }

    private record NameBefore(Instant at, String detail) {}

    /**
     * @param session the sign-in that looks; 0 if it is none
     * @param secret of the token just made; empty otherwise
     */
    MeView me(String login, long session, String secret, String notice, FormValues fill, List<Problem> problems) {
        Account own = accounts.byLogin(login).orElseThrow(() -> new NotFound("account " + login));
        Map<String, Account> others = accounts.active().stream()
                .collect(java.util.stream.Collectors.toMap(
                        a -> a.login, a -> a, (a, b) -> a, java.util.LinkedHashMap::new));
        ZoneId zone = own.zoneId();
        Instant now = clock.instant();
        return new MeView(
                login,
                own.displayName,
                namesBefore(login, zone),
                RoleNames.join(own.roles()),
                own.mentor == null ? "" : name(own.mentor, others),
                others.values().stream()
                        .filter(a -> login.equals(a.mentor))
                        .map(a -> a.displayName)
                        .toList(),
                sessions.of(login).stream().map(s -> line(s, session, zone)).toList(),
                tokens.of(own).stream()
                        .map(token -> line(token.view(), now, zone))
                        .toList(),
                Option.of(TokenScope.class),
                absences.of(login).stream().map(a -> line(a, others, now, zone)).toList(),
                away.standsInOf(login, now).stream().map(a -> name(a, others)).toList(),
                others.values().stream()
                        .filter(a -> !a.login.equals(login) && a.actor().works())
                        .map(a -> new Option(a.login, a.displayName))
                        .toList(),
                secret,
                notice,
                fill,
                problems);
    }

    /** What the fields hold before anybody types. */
    FormValues stored(String login) {
        Account own = accounts.byLogin(login).orElseThrow(() -> new NotFound("account " + login));
        return new FormValues()
                .set("display", own.displayName)
                .set("zone", own.zone)
                .set("scope", TokenScope.ACT.name());
    }

    private static String name(String login, Map<String, Account> others) {
        Account other = others.get(login);
        return other == null ? login : other.displayName;
    }

    private List<String> namesBefore(String login, ZoneId zone) {
        return Sql.of(database, text.statement("names before"))
                .with("login", login)
                .with("what", AccountLog.RENAMED)
                .rows(NameBefore.class)
                .stream()
                .map(before ->
                        before.detail() + " (until " + DAY.format(before.at().atZone(zone)) + ")")
                .toList();
    }

    private static MeView.SessionLine line(SessionStore.Own session, long here, ZoneId zone) {
        return new MeView.SessionLine(
                session.id(),
                session.browser().isEmpty() ? "a program that says no name" : session.browser(),
                session.address(),
                when(session.made(), zone),
                when(session.seen(), zone),
                session.id() == here);
    }

    private static MeView.AwayLine line(Absence absence, Map<String, Account> others, Instant now, ZoneId zone) {
        return new MeView.AwayLine(
                absence.id == null ? 0 : absence.id,
                DAY.format(absence.begins.atZone(zone)),
                DAY.format(absence.ends.atZone(zone).minusDays(1)),
                name(absence.delegate, others),
                absence.covers(now));
    }

    private static MeView.TokenLine line(TokenView token, Instant now, ZoneId zone) {
        boolean expired = !now.isBefore(token.expiresAt());
        String state = token.revokedAt() != null ? "revoked" : expired ? "expired" : "good";
        return new MeView.TokenLine(
                token.id(),
                token.name(),
                TokenScope.join(token.scopes()),
                when(token.createdAt(), zone),
                when(token.expiresAt(), zone),
                token.lastUsed() == null ? "never" : when(token.lastUsed(), zone),
                state,
                state.equals("good"));
    }

    private static String when(Instant time, ZoneId zone) {
        return WHEN.format(time.atZone(zone));
    }
}
