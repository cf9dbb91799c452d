package org.benchtrail.site;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;

/** One decision about calendar, times and policies. */
@Entity
@Immutable
@Table(name = "site_version")
class SiteVersion {
    @Id
    int number;

    @Column(updatable = false)
    Instant made = Instant.EPOCH;

    @Column(name = "made_by", updatable = false)
    String madeBy = "";

    @Column(name = "in_force", updatable = false)
    Instant inForce = Instant.EPOCH;

    @Column(updatable = false)
    String note = "";

    @Column(updatable = false)
    String rules = "";
}
