package org.benchtrail.people;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** The rows of accounts. */
@ApplicationScoped
class Accounts implements PanacheRepository<Account> {
    private static final Pattern LOGIN = Pattern.compile("[a-z0-9._-]{2,40}");

    static boolean isLogin(String text) {
        return LOGIN.matcher(text).matches();
    }

    /** The account; empty for a text that can be nobody's login, which is not looked up. */
    Optional<Account> byLogin(String login) {
        return isLogin(login) ? find("login", login).firstResultOptional() : Optional.empty();
    }

    List<Account> byLogins(Collection<String> logins) {
        return logins.isEmpty() ? List.of() : list("login in ?1", logins);
    }

    /** The account, which nobody else can change until the transaction ends. */
    Optional<Account> lockedByLogin(String login) {
        return isLogin(login)
                ? find("login", login).withLock(LockModeType.PESSIMISTIC_WRITE).firstResultOptional()
                : Optional.empty();
    }

    /** Every active administrator, locked in one order, so that two people cannot remove each other at once. */
    List<Account> lockedAdministrators() {
        return find("active and array_contains(roles, 'ADMINISTRATOR') order by id")
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .list();
    }

    /** Everybody who can sign in, by name. */
    List<Account> active() {
        return list("active order by displayName, login");
    }

    /** At most {@code limit} accounts after {@code after} whose login or name contains {@code search}. */
    List<Account> page(String search, String after, int limit) {
        return find(
                        "login > ?1 and (login like ?2 escape '!' or lower(displayName) like ?2 escape '!') order by login",
                        after,
                        "%" + literal(search.toLowerCase(Locale.ROOT)) + "%")
                .range(0, limit - 1)
                .list();
    }

    /** Writes at once, so that a clash shows here and not at commit. */
    void add(Account account) {
        persistAndFlush(account);
    }

    private static String literal(String search) {
        return search.toLowerCase(Locale.ROOT)
                .replace("!", "!!")
                .replace("%", "!%")
                .replace("_", "!_");
    }
}
