package org.benchtrail.site;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** The stored decisions: appended and read; the database refuses anything else. Runs within the caller's transaction. */
@Startup
@ApplicationScoped
class SiteVersions implements PanacheRepositoryBase<SiteVersion, Integer> {
    /** Any number, as long as nothing else takes the same lock. */
    private static final long LOCK = 20_261_126_1200L;

    private final SqlText sql = SqlText.of(SiteVersions.class);

    /** Number of the latest one; 0 if there is none yet. */
    int last() {
        return Sql.of(getEntityManager(), sql.statement("last")).value(Integer.class);
    }

    List<SiteVersion> after(int number) {
        return list("number > ?1 order by number", number);
    }

    /** Lets nobody decide anything until the transaction ends. */
    void keep() {
        Sql.of(getEntityManager(), sql.statement("keep")).with("lock", LOCK).value(Integer.class);
    }

    /** Waits for whatever was begun under the decisions of before, and lets nobody else begin until the transaction ends. */
    void lock() {
        Sql.of(getEntityManager(), sql.statement("lock")).with("lock", LOCK).value(Integer.class);
    }
}
