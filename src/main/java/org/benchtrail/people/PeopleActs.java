package org.benchtrail.people;

import jakarta.inject.Singleton;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.platform.NotFound;
import org.hibernate.exception.ConstraintViolationException;
import org.jspecify.annotations.Nullable;

/**
 * What can be done to accounts and tokens. Every act is one transaction, asks {@link Permissions} first, checks what was
 * typed ({@link Invalid} names all of it at once), and adds a line to the account record.
 */
@Singleton
@Transactional
public class PeopleActs {
    private static final String LOGIN_RULE =
            "Choose 2 to 40 of these: small letters a to z, digits, dot, underscore, hyphen.";
    private static final int LONGEST_NAME = 100;
    private static final int MOST_PER_PAGE = 100;

    private final Accounts accounts;
    private final ApiTokens tokens;
    private final Passwords passwords;
    private final AccountLog log;
    private final OpenWork work;
    private final SessionStore sessions;
    private final Tries tries;
    private final SecondFactors factors;
    private final Clock clock;
    private final SignInConfig config;

    PeopleActs(
            Accounts accounts,
            ApiTokens tokens,
            Passwords passwords,
            AccountLog log,
            OpenWork work,
            SessionStore sessions,
            Tries tries,
            SecondFactors factors,
            Clock clock,
            SignInConfig config) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.passwords = passwords;
        this.log = log;
        this.work = work;
        this.sessions = sessions;
        this.tries = tries;
        this.factors = factors;
        this.clock = clock;
        this.config = config;
    }

    public AccountView createAccount(Actor by, String login, String name, Set<Role> roles, String password) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        return create(by.account(), login, name, roles, password, () -> passwords.hash(password));
    }

    /** Makes the account unless there is one with this login, which is then left as it is. For use at start-up, by no person. */
    public AccountView ensureAccount(String login, String name, Set<Role> roles, String password) {
        Optional<Account> present = accounts.byLogin(login);
        return present.isPresent()
                ? present.get().view(clock.instant())
                : create(AccountLog.SERVER, login, name, roles, password, () -> passwords.hash(password));
    }

    /** A password that everybody knows, hashed once for all accounts that share it: a hash is slow on purpose. */
    public record KnownPassword(String text, String hash) {}

    public KnownPassword known(String password) {
        return new KnownPassword(password, passwords.hash(password));
    }

    /** Makes an account that there is not yet. For use at start-up, by no person. */
    public void makeAccount(String login, String name, Set<Role> roles, KnownPassword password) {
        create(AccountLog.SERVER, login, name, roles, password.text(), password::hash);
    }

    /** Whether there is no account at all. */
    public boolean nobodyYet() {
        return accounts.count() == 0;
    }

    /** Changes one's own password; every other sign-in of the account ends. */
    public void changePassword(Actor by, String present, String chosen) {
        Account account = lock(by.account());
        Invalid.Collector problems = new Invalid.Collector()
                .require(
                        passwords.matches(present, account.passwordHash),
                        "present",
                        "Type the password you have now; this one is not it.");
        Passwords.check(chosen, "password", problems);
        problems.throwIfAny();
        setPassword(account, chosen);
        log.note(by.account(), "password changed", account.login, "");
    }

    /** Gives somebody a new password, and lifts a lock; every sign-in of the account ends. */
    public void resetPassword(Actor by, String login, String chosen) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        Account account = lock(login);
        Invalid.Collector problems = new Invalid.Collector();
        Passwords.check(chosen, "password", problems);
        problems.throwIfAny();
        setPassword(account, chosen);
        tokens.endAll(account, clock.instant());
        tries.forget(login);
        log.note(by.account(), "password reset", login, "");
    }

    public AccountView setRoles(Actor by, String login, Set<Role> roles) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        List<Account> administrators = accounts.lockedAdministrators();
        Account account = lock(login);
        Invalid.Collector problems = new Invalid.Collector();
        checkRoles(roles, problems);
        problems.require(
                roles.contains(Role.ADMINISTRATOR) || !isLast(account, administrators),
                "roles",
                lastAdministrator(login));
        problems.throwIfAny();
        new Invalid.Collector()
                .require(
                        !by.account().equals(login) || account.roles().containsAll(roles),
                        "roles",
                        "Nobody gives a role to their own account: another administrator has to do it.")
                .throwIfAny();
        String before = words(account.roles());
        account.roles(roles);
        account.endSessions();
        log.note(by.account(), "roles set", login, "from " + before + " to " + words(account.roles()));
        return account.view(clock.instant());
    }

    /** Closes an account: nobody comes in by it any more, neither by password nor by cookie nor by token. */
    public AccountView deactivate(Actor by, String login) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        List<Account> administrators = accounts.lockedAdministrators();
        Account account = lock(login);
        new Invalid.Collector()
                .require(!isLast(account, administrators), "login", lastAdministrator(login))
                .throwIfAny();
        if (account.active) {
            account.active = false;
            account.endSessions();
            tokens.endAll(account, clock.instant());
            log.note(by.account(), "deactivated", login, "");
        }
        return account.view(clock.instant());
    }

    public AccountView reactivate(Actor by, String login) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        Account account = lock(login);
        if (!account.active) {
            account.active = true;
            account.forgetFailures();
            log.note(by.account(), "reactivated", login, "");
        }
        return account.view(clock.instant());
    }

    /** Changes one's own name; those of before stay in the record of accounts, and the trail names accounts anyway. */
    public AccountView rename(Actor by, String name) {
        Account account = lock(by.account());
        new Invalid.Collector()
                .require(isName(name), "display", "Give your name, in at most 100 characters.")
                .require(PlainText.isText(name), "display", PlainText.WHAT_TO_DO)
                .throwIfAny();
        String chosen = PlainText.line(name);
        if (!chosen.equals(account.displayName)) {
            log.note(by.account(), AccountLog.RENAMED, account.login, account.displayName);
            account.displayName = chosen;
        }
        return account.view(clock.instant());
    }

    /**
     * Says which mentor a trainee has.
     *
     * @param mentor account; empty for none
     */
    public void setMentor(Actor by, String login, String mentor) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        setMentor(by.account(), lock(login), mentor);
    }

    /** Gives a trainee a mentor unless they have one. For use at start-up, by no person. */
    public void ensureMentor(String login, String mentor) {
        Account account = lock(login);
        if (account.mentor == null) {
            setMentor(AccountLog.SERVER, account, mentor);
        }
    }

    private void setMentor(String by, Account account, String mentor) {
        boolean isMentor = accounts.byLogin(mentor)
                .filter(a -> a.active && a.roles().contains(Role.MENTOR))
                .isPresent();
        new Invalid.Collector()
                .require(mentor.isEmpty() || isMentor, "mentor", "Choose somebody who is a mentor.")
                .require(
                        mentor.isEmpty() || account.roles().contains(Role.TRAINEE),
                        "mentor",
                        "Only a trainee has a mentor.")
                .throwIfAny();
        account.mentor = mentor.isEmpty() ? null : mentor;
        log.note(by, "mentor set", account.login, mentor);
    }

    /** Account of the mentor of a trainee; empty if it has none. */
    public String mentor(Actor by, String login) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        String mentor = find(login).mentor;
        return mentor == null ? "" : mentor;
    }

    /** Takes away the second factor of somebody who lost the device and its codes; every sign-in of the account ends. */
    public void dropSecondFactor(Actor by, String login) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        Account account = lock(login);
        new Invalid.Collector()
                .require(!by.account().equals(login), "login", "Another administrator has to vouch for you.")
                .throwIfAny();
        factors.drop(login);
        account.endSessions();
        log.note(by.account(), "second factor taken away", login, "");
    }

    /** Asks for the password once more, before something that outlives the sign-in. */
    public void requirePassword(Actor by, String present) {
        new Invalid.Collector()
                .require(
                        passwords.matches(present, find(by.account()).passwordHash),
                        "present",
                        "Type the password you have now; this one is not it.")
                .throwIfAny();
    }

    /** Ends one of one's own sign-ins. */
    public void endSession(Actor by, long id) {
        if (!sessions.endOne(by.account(), id)) {
            throw new NotFound("sign-in " + id + " of yours");
        }
        log.note(by.account(), "sign-in ended", by.account(), "");
    }

    /** Ends every sign-in of one's own but one. */
    public void endOtherSessions(Actor by, long kept) {
        sessions.endOthers(by.account(), kept);
        log.note(by.account(), "other sign-ins ended", by.account(), "");
    }

    /** Ends every sign-in of somebody. */
    public void endSessions(Actor by, String login) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        sessions.endOthers(lock(login).login, 0);
        log.note(by.account(), "sign-ins ended", login, "");
    }

    /** Sets the time zone in which {@code by} reads dates. */
    public AccountView setZone(Actor by, String zone) {
        Account account = lock(by.account());
        new Invalid.Collector()
                .require(
                        isZone(zone),
                        "zone",
                        "Choose a time zone by its region and city, such as Europe/Lisbon, or UTC.")
                .throwIfAny();
        account.zone = zone;
        log.note(by.account(), "zone set", account.login, zone);
        return account.view(clock.instant());
    }

    /**
     * Makes a token for a program of {@code by}'s own; it may do everything that its owner may.
     *
     * @param days how long it is good for, 1 to the configured most; null for the most
     */
    public NewToken createToken(Actor by, String name, @Nullable Integer days) {
        return createToken(by, name, days, TokenScope.ADMINISTER);
    }

    /** As {@link #createToken(Actor, String, Integer)}, for less than everything. */
    public NewToken createToken(Actor by, String name, @Nullable Integer days, TokenScope scope) {
        Permissions.require(Permission.OWN_TOKENS, by);
        Account owner = lock(by.account());
        int good = days == null ? config.tokenDays() : days;
        new Invalid.Collector()
                .require(isName(name), "name", "Name the program that will use the token, in at most 100 characters.")
                .require(PlainText.isText(name), "name", PlainText.WHAT_TO_DO)
                .require(
                        good >= 1 && good <= config.tokenDays(),
                        "days",
                        "Let the token be good for 1 to " + config.tokenDays() + " days.")
                .throwIfAny();
        String secret = Secrets.newToken();
        ApiToken token = new ApiToken();
        token.account = owner;
        token.name = PlainText.line(name);
        token.hash = Secrets.hashOfToken(secret);
        token.scopes = scope.included().stream().map(Enum::name).toArray(String[]::new);
        token.createdAt = clock.instant();
        token.expiresAt = token.createdAt.plus(Duration.ofDays(good));
        tokens.add(token);
        log.note(by.account(), "token made", owner.login, "token " + token.id + ", " + token.name);
        return new NewToken(token.view(), secret);
    }

    /** Ends a token of {@code by}'s own, for good. */
    public void revokeToken(Actor by, long id) {
        Permissions.require(Permission.OWN_TOKENS, by);
        Account owner = lock(by.account());
        ApiToken token = tokens.of(owner, id).orElseThrow(() -> new NotFound("token " + id + " of yours"));
        if (token.revokedAt == null) {
            token.revokedAt = clock.instant();
            log.note(by.account(), "token revoked", owner.login, "token " + id + ", " + token.name);
        }
    }

    /**
     * A stretch of the accounts by login.
     *
     * @param search part of a login or name; empty for all
     * @param after the login after which to begin; empty for the start
     * @param limit 1 to 100
     */
    public AccountsView list(Actor by, String search, String after, int limit) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        new Invalid.Collector()
                .require(PlainText.isText(search), "search", PlainText.WHAT_TO_DO)
                .require(PlainText.isText(after), "after", PlainText.WHAT_TO_DO)
                .throwIfAny();
        int most = Math.max(1, Math.min(limit, MOST_PER_PAGE));
        Instant now = clock.instant();
        List<AccountView> found = accounts.page(search.strip(), after, most + 1).stream()
                .map(account -> account.view(now))
                .toList();
        if (found.size() <= most) {
            return new AccountsView(found, null);
        }
        return new AccountsView(found.subList(0, most), found.get(most - 1).login());
    }

    /**
     * Hands the open tickets of an account to somebody: acts of {@code by}, who has to be a supervisor. Outside any transaction,
     * because each ticket has its own.
     */
    @Transactional(Transactional.TxType.NEVER)
    public List<OpenWork.Handed> handOver(Actor by, String login, String to) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        return work.handOver(login, to, by);
    }

    /** The open tickets that are with an account: closing it leaves them there, until a supervisor assigns them to others. */
    public OpenWork.Part openWork(Actor by, String login) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        return work.with(login, by);
    }

    public AccountView account(Actor by, String login) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        return find(login).view(clock.instant());
    }

    /** {@code by}'s own account. */
    public AccountView own(Actor by) {
        return find(by.account()).view(clock.instant());
    }

    /** {@code by}'s own tokens, newest first. */
    public List<TokenView> ownTokens(Actor by) {
        Permissions.require(Permission.OWN_TOKENS, by);
        return tokens.of(find(by.account())).stream().map(ApiToken::view).toList();
    }

    private AccountView create(
            String by, String login, String name, Set<Role> roles, String password, Supplier<String> hash) {
        checkNew(login, name, roles, password);
        Account account = new Account();
        account.login = login;
        account.displayName = PlainText.line(name);
        account.roles(roles);
        account.passwordHash = hash.get();
        account.createdAt = clock.instant();
        try {
            accounts.persistAndFlush(account);
        } catch (ConstraintViolationException takenMeanwhile) {
            throw taken(login);
        }
        log.note(by, "created", login, "roles " + words(account.roles()));
        return account.view(account.createdAt);
    }

    private void checkNew(String login, String name, Set<Role> roles, String password) {
        Invalid.Collector problems = new Invalid.Collector()
                .require(Accounts.isLogin(login), "login", LOGIN_RULE)
                .require(!login.equals(Stamp.SERVER), "login", "The trail means the server itself by this name.")
                .require(isName(name), "name", "Give the person's name, in at most 100 characters.")
                .require(PlainText.isText(name), "name", PlainText.WHAT_TO_DO);
        checkRoles(roles, problems);
        Passwords.check(password, "password", problems);
        problems.throwIfAny();
        if (accounts.byLogin(login).isPresent()) {
            throw taken(login);
        }
    }

    private static Invalid taken(String login) {
        return new Invalid("login", "There is an account " + login + " already; choose another login.");
    }

    private static void checkRoles(Set<Role> roles, Invalid.Collector problems) {
        problems.require(!roles.isEmpty(), "roles", "Choose at least one role.")
                .require(
                        !roles.containsAll(Set.of(Role.TRAINEE, Role.MENTOR)),
                        "roles",
                        "Choose trainee or mentor: nobody signs off a trainee who is one.");
    }

    private void setPassword(Account account, String chosen) {
        account.passwordHash = passwords.hash(chosen);
        account.forgetFailures();
        account.endSessions();
    }

    private Account find(String login) {
        return accounts.byLogin(login).orElseThrow(() -> new NotFound("account " + login));
    }

    private Account lock(String login) {
        return accounts.lockedByLogin(login).orElseThrow(() -> new NotFound("account " + login));
    }

    private static boolean isLast(Account account, List<Account> administrators) {
        return administrators.size() == 1 && administrators.contains(account);
    }

    private static String lastAdministrator(String login) {
        return login + " is the last administrator; make somebody else administrator first.";
    }

    private static boolean isName(String text) {
        String line = PlainText.line(text);
        return !line.isEmpty() && line.length() <= LONGEST_NAME;
    }

    private static boolean isZone(String zone) {
        try {
            return ZoneId.getAvailableZoneIds().contains(ZoneId.of(zone).getId());
        } catch (DateTimeException unknown) {
            return false;
        }
    }

    private static String words(Set<Role> roles) {
        return roles.stream().sorted().map(Role::name).toList().toString();
    }
}
