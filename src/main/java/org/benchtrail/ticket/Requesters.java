package org.benchtrail.ticket;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;

/** The rows of requesters. */
@ApplicationScoped
class Requesters implements PanacheRepository<Requester> {

    /** The number under which this person's name and contact are kept. */
    long keep(String name, String contact) {
        return find("name = ?1 and contact = ?2 and erased is null", name, contact)
                .firstResultOptional()
                .map(present -> present.id)
                .orElseGet(() -> {
                    Requester fresh = new Requester(name, contact);
                    persistAndFlush(fresh);
                    return fresh.id;
                });
    }
}
