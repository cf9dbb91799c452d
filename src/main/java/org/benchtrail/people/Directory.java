package org.benchtrail.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;

/** Who is who, for the other features: names to show, and who works on tickets. */
@ApplicationScoped
@Transactional
public class Directory {
    private final Accounts accounts;

    Directory(Accounts accounts) {
        this.accounts = accounts;
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
