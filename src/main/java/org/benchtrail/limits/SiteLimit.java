package org.benchtrail.limits;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.Instant;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.measure.Provenance;
import org.benchtrail.core.measure.Units;
import org.jspecify.annotations.Nullable;

/** A limit that the shop added. */
@Entity
@Table(name = "site_limit")
class SiteLimit {
    @Id
    String id = "";

    String quantity = "";
    String unit = "";

    @Nullable
    BigDecimal lower;

    @Nullable
    BigDecimal upper;

    String source = "";
    String note = "";
    Instant added = Instant.EPOCH;

    @Column(name = "added_by")
    String addedBy = "";

    @Nullable
    Instant retired;

    @Column(name = "retired_by")
    @Nullable
    String retiredBy;

    protected SiteLimit() {}

    SiteLimit(LimitLibrary.Row row, Instant added, String addedBy) {
        this.id = row.id();
        this.quantity = row.quantity();
        this.unit = row.limit().unit().symbol();
        this.lower = row.limit().lower().orElse(null);
        this.upper = row.limit().upper().orElse(null);
        this.source = row.limit().source();
        this.note = row.note();
        this.added = added;
        this.addedBy = addedBy;
    }

    LimitLibrary.Row row() {
        Limit limit = Limit.of(plain(lower), plain(upper), Units.named(unit), source);
        return new LimitLibrary.Row(id, quantity, limit, "-", Provenance.GIVEN, note);
    }

    private static @Nullable BigDecimal plain(@Nullable BigDecimal stored) {
        return stored == null ? null : new BigDecimal(stored.toPlainString());
    }
}
