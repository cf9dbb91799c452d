package org.benchtrail.knowledge;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.function.Predicate;

/** Who wrote words of a known cause, and so does not confirm it; they stay so for good. */
@ApplicationScoped
class CauseAuthors implements PanacheRepositoryBase<CauseAuthor, Long> {

    /** By account, the first to write first. */
    List<String> of(long cause) {
        return list("cause = ?1 order by id", cause).stream().map(a -> a.who).toList();
    }

    /** Whether one of them is meant. */
    boolean any(KnownCause cause, Predicate<String> meant) {
        return of(cause.number()).stream().anyMatch(meant);
    }

    void add(KnownCause cause, Collection<String> people) {
        List<String> present = of(cause.number());
        people.stream()
                .filter(who -> !present.contains(who))
                .sorted()
                .forEach(who -> persist(new CauseAuthor(cause.number(), who)));
    }
}
