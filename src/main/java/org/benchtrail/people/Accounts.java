package org.benchtrail.people;

import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The stored accounts and tokens, and the record, to which lines can only be added. */
@Singleton
class Accounts {
    private final EntityManager database;

    Accounts(EntityManager database) {
        this.database = database;
    }

    Optional<Account> byLogin(String login) {
        return one("from Account where login = ?1", login);
    }

    Optional<Account> byId(long id) {
        return Optional.ofNullable(database.find(Account.class, id));
    }

    /** The account, which nobody else can change until the transaction ends. */
    Optional<Account> lockedByLogin(String login) {
        return database.createQuery("from Account where login = ?1", Account.class)
                .setParameter(1, login)
                .setLockMode(LockModeType.PESSIMISTIC_WRITE)
                .getResultStream()
                .findFirst();
    }

    /** Every active administrator, locked in one order, so that two people cannot remove each other at once. */
    List<Account> lockedAdministrators() {
        return database.createQuery(
                        "from Account where active and array_contains(roles, 'ADMINISTRATOR') order by id",
                        Account.class)
                .setLockMode(LockModeType.PESSIMISTIC_WRITE)
                .getResultList();
    }

    boolean isEmpty() {
        return database.createQuery("select count(*) from Account", Long.class).getSingleResult() == 0;
    }

    /** At most {@code limit} accounts after {@code after} whose login or name contains {@code search}. */
    List<Account> list(String search, String after, int limit) {
        return database.createQuery(
                        "from Account where login > ?1 and (login like ?2 escape '!' or lower(displayName) like ?2 escape '!')"
                                + " order by login",
                        Account.class)
                .setParameter(1, after)
                .setParameter(2, "%" + literal(search.toLowerCase(Locale.ROOT)) + "%")
                .setMaxResults(limit)
                .getResultList();
    }

    Optional<ApiToken> tokenByHash(byte[] hash) {
        return database.createQuery("from ApiToken t join fetch t.account where t.hash = ?1", ApiToken.class)
                .setParameter(1, hash)
                .getResultStream()
                .findFirst();
    }

    Optional<ApiToken> token(long id, Account owner) {
        return Optional.ofNullable(database.find(ApiToken.class, id)).filter(token -> token.account.equals(owner));
    }

    List<ApiToken> tokensOf(Account owner) {
        return database.createQuery("from ApiToken where account = ?1 order by id desc", ApiToken.class)
                .setParameter(1, owner)
                .getResultList();
    }

    /** Writes at once, so that a clash shows here and not at commit. */
    void add(Account account) {
        database.persist(account);
        database.flush();
    }

    void add(ApiToken token) {
        database.persist(token);
        database.flush();
    }

    void append(AccountRecord line) {
        database.persist(line);
    }

    private Optional<Account> one(String query, String parameter) {
        return database.createQuery(query, Account.class)
                .setParameter(1, parameter)
                .getResultStream()
                .findFirst();
    }

    private static String literal(String search) {
        return search.replace("!", "!!").replace("%", "!%").replace("_", "!_");
    }
}
