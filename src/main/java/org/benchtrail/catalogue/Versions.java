package org.benchtrail.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.platform.NotFound;

/** The stored versions: appended and read, nothing else. Runs within the caller's transaction. */
@ApplicationScoped
class Versions {
    /** Any number, as long as nothing else takes the same lock: whoever makes a version makes it alone. */
    private static final long LOCK = 20_261_125_1220L;

    static final String SERVER = "server";

    private final EntityManager database;
    private final Clock clock;

    Versions(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    int last() {
        return database.createQuery("select max(number) from VersionRow", Integer.class)
                .getSingleResult();
    }

    VersionRow row(int number) {
        VersionRow row = database.find(VersionRow.class, number);
        if (row == null) {
            throw new NotFound("version " + number + " of the catalogue");
        }
        return row;
    }

    /** Newest first, from the one before {@code before} on. */
    List<VersionRow> list(int before, int most) {
        return database.createQuery("from VersionRow where number < ?1 order by number desc", VersionRow.class)
                .setParameter(1, before)
                .setMaxResults(most)
                .getResultList();
    }

    boolean isKnown(String practice) {
        return database.createQuery("select count(*) from VersionRow where practice = ?1", Long.class)
                        .setParameter(1, practice)
                        .getSingleResult()
                > 0;
    }

    /** Lets nobody else make a version until the transaction ends. */
    void lock() {
        database.createNativeQuery("select 1 from pg_advisory_xact_lock(?)", Integer.class)
                .setParameter(1, LOCK)
                .getSingleResult();
    }

    /** Stores the row as the next version; the caller holds the lock. */
    VersionRow append(VersionRow row, String by) {
        Integer last = database.createQuery("select max(number) from VersionRow", Integer.class)
                .getSingleResult();
        row.number = last == null ? 1 : last + 1;
        row.madeAt = clock.instant().truncatedTo(ChronoUnit.MICROS);
        row.madeBy = by;
        database.persist(row);
        database.flush();
        return row;
    }

    void deliverFirst() {
        lock();
        if (list(Integer.MAX_VALUE, 1).isEmpty()) {
            VersionRow row = new VersionRow();
            row.practice = CatalogueFile.deliveredText();
            practice(row);
            row.note = "As delivered";
            append(row, SERVER);
        }
    }

    static Catalogue practice(VersionRow row) {
        CatalogueFile file = CatalogueFile.read(row.practice);
        return file.catalogue()
                .orElseThrow(() -> new IllegalStateException("version " + row.number + ": " + file.faults()));
    }
}
