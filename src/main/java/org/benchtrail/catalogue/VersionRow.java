package org.benchtrail.catalogue;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** One stored version of the catalogue. */
@Entity
@Immutable
@Table(name = "catalogue_version")
class VersionRow {
    @Id
    int number;

    @Column(name = "made_at", updatable = false)
    Instant madeAt = Instant.EPOCH;

    @Column(name = "made_by", updatable = false)
    String madeBy = "";

    @Column(name = "confirmed_by", updatable = false)
    @Nullable
    String confirmedBy;

    @Column(updatable = false)
    String note = "";

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    VersionOrigin origin = VersionOrigin.DELIVERED;

    @Column(updatable = false)
    String practice = "";

    @Column(updatable = false)
    @Nullable
    String figures;

    @Column(updatable = false)
    @Nullable
    String basis;

    @Column(updatable = false)
    @Nullable
    Integer restores;

    VersionView view() {
        return new VersionView(number, madeAt, madeBy, confirmedBy, note, origin, restores);
    }
}
