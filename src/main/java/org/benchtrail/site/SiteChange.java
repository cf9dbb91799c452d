package org.benchtrail.site;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** One value that was changed: when, by whom, what was before and after. */
@Entity
@Immutable
@Table(name = "site_change")
class SiteChange {
    /** Of what. */
    enum Kind {
        PLACE,
        TEAM,
        DEVICE
    }

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    Instant at = Instant.EPOCH;

    @Column(updatable = false)
    String who = "";

    @Enumerated(EnumType.STRING)
    @Column(updatable = false)
    Kind kind = Kind.PLACE;

    @Column(updatable = false)
    long subject;

    @Column(updatable = false)
    String field = "";

    @Column(updatable = false)
    String before = "";

    @Column(updatable = false)
    String after = "";
}
