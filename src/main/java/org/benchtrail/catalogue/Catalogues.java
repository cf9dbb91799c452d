package org.benchtrail.catalogue;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The versions of the catalogue, ready to rank with. Which one is in force is asked of the database each time, so that a new
 * one counts at once on every node; what a version holds never changes and is kept.
 */
@ApplicationScoped
public class Catalogues {
    /** Before whatever else happens at the start and may want to rank. */
    private static final int EARLY = 100;

    private final Versions versions;
    private final Map<Integer, CatalogueVersion> ready = new ConcurrentHashMap<>();

    Catalogues(Versions versions) {
        this.versions = versions;
    }

    /** The delivered file is version 1; a later release's is offered on the page of versions. */
    @Transactional
    void deliver(@Observes @Priority(EARLY) StartupEvent start) {
        versions.deliverFirst();
    }

    /** The version that new rankings are made with. */
    @Transactional
    public CatalogueVersion inForce() {
        return version(versions.last());
    }

    /** @throws org.benchtrail.platform.NotFound if there never was such a version */
    @Transactional
    public CatalogueVersion version(int number) {
        CatalogueVersion kept = ready.get(number);
        if (kept != null) {
            return kept;
        }
        CatalogueVersion read = Versions.made(versions.row(number));
        ready.put(number, read);
        return read;
    }
}
