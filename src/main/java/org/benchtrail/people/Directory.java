package org.benchtrail.people;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;

/** Who is who, for the other features: names to show, and who works on tickets. */
@ApplicationScoped
public class Directory {
    private final EntityManager database;

    Directory(EntityManager database) {
        this.database = database;
    }

    /** The person behind an account that is active and works on tickets. */
    @Transactional
    public Optional<Actor> worker(String login) {
        return workers().stream().filter(w -> w.account().equals(login)).findFirst();
    }

    /** Everybody who is active and works on tickets, by name. */
    @Transactional
    public List<Actor> workers() {
        return database.createQuery("from Account where active order by displayName, login", Account.class)
                .getResultStream()
                .map(a -> new Actor(a.login, a.displayName, a.roles()))
                .filter(Actor::works)
                .toList();
    }

    /** Names by account, of active and closed accounts alike. */
    @Transactional
    public Map<String, String> names() {
        return database.createQuery("from Account", Account.class)
                .getResultStream()
                .collect(Collectors.toMap(a -> a.login, a -> a.displayName));
    }
}
