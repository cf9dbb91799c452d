package org.benchtrail.catalogue;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.List;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** The stored versions: appended and read; the database refuses anything else. Runs within the caller's transaction. */
@ApplicationScoped
class Versions implements PanacheRepositoryBase<VersionRow, Integer> {
    /** Any number, as long as nothing else takes the same lock: whoever makes a version makes it alone. */
    private static final long LOCK = 20_261_125_1220L;

    static final String SERVER = "server";

    private final Clock clock;
    private final SqlText sql = SqlText.of(Versions.class);

    Versions(Clock clock) {
        this.clock = clock;
    }

    /** Number of the latest version; 0 if there is none yet. */
    int last() {
        return Sql.of(getEntityManager(), sql.statement("last")).value(Integer.class);
    }

    VersionRow row(int number) {
        return findByIdOptional(number).orElseThrow(() -> new NotFound("version " + number + " of the catalogue"));
    }

    /** Newest first, from the one before {@code before} on. */
    List<VersionRow> list(int before, int most) {
        return find("number < ?1 order by number desc", before)
                .range(0, most - 1)
                .list();
    }

    boolean isKnown(String practice) {
        return count("practice", practice) > 0;
    }

    /** Lets nobody else make a version until the transaction ends. */
    void lock() {
        Sql.of(getEntityManager(), sql.statement("lock")).with("lock", LOCK).value(Integer.class);
    }

    /** Stores the row as the next version; the caller holds the lock. */
    VersionRow append(VersionRow row, String by) {
        row.number = last() + 1;
        row.madeAt = clock.instant();
        row.madeBy = by;
        persistAndFlush(row);
        return row;
    }

    void deliverFirst() {
        lock();
        if (last() == 0) {
            VersionRow row = new VersionRow();
            row.practice = CatalogueFile.deliveredText();
            practice(row);
            row.note = "As delivered";
            append(row, SERVER);
        }
    }

    static Catalogue practice(VersionRow row) {
        return practice(row, CatalogueFile.stored(row.practice));
    }

    private static Catalogue practice(VersionRow row, CatalogueFile file) {
        return file.catalogue()
                .orElseThrow(() -> new IllegalStateException("version " + row.number + ": " + file.faults()));
    }

    /** Ready to rank with. */
    static CatalogueVersion made(VersionRow row) {
        CatalogueFile file = CatalogueFile.stored(row.practice);
        return row.figures == null
                ? CatalogueVersion.of(row.number, practice(row, file), file.paths())
                : CatalogueVersion.of(row.number, FiguresJson.read(row.figures), file.paths());
    }
}
