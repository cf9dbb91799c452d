package org.benchtrail.people;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import io.quarkus.panache.common.Parameters;
import jakarta.inject.Singleton;
import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** The rows of accounts. */
@Singleton
class Accounts implements PanacheRepository<Account> {
    private static final Pattern LOGIN = Pattern.compile("[a-z0-9._-]{2,40}");

    static boolean isLogin(String text) {
        return LOGIN.matcher(text).matches();
    }

    /** The account; empty for a text that can be nobody's login, which is not looked up. */
    Optional<Account> byLogin(String login) {
        return isLogin(login) ? find("login", login).singleResultOptional() : Optional.empty();
    }

    /** The account, which nobody else can change until the transaction ends. */
    Optional<Account> lockedByLogin(String login) {
        return isLogin(login)
                ? find("login", login).withLock(LockModeType.PESSIMISTIC_WRITE).singleResultOptional()
                : Optional.empty();
    }

    /** Every active administrator, locked in one order, so that two people cannot remove each other at once. */
    List<Account> lockedAdministrators() {
        return find("active and array_contains(roles, 'ADMINISTRATOR') order by id")
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .list();
    }

    /** At most {@code limit} accounts after {@code after} whose login or name contains {@code search}. */
    List<Account> page(String search, String after, int limit) {
        return find(
                        "login > :after and (login like :part escape '!' or lower(displayName) like :part escape '!')"
                                + " order by login",
                        Parameters.with("after", after).and("part", "%" + literal(search) + "%"))
                .page(0, limit)
                .list();
    }

    private static String literal(String search) {
        return search.toLowerCase(Locale.ROOT)
                .replace("!", "!!")
                .replace("%", "!%")
                .replace("_", "!_");
    }
}
