package org.benchtrail.site;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchtrail.core.text.PlainText;

/** The rows of teams. */
@ApplicationScoped
class Teams implements PanacheRepository<Team> {
    Optional<Team> named(String name) {
        return PlainText.isText(name)
                ? find("lower(name) = ?1", name.strip().toLowerCase(Locale.ROOT))
                        .firstResultOptional()
                : Optional.empty();
    }

    List<Team> all() {
        return list("order by closed, lower(name)");
    }
}
