package org.benchtrail.knowledge;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** One entry of a known cause's history; written once. */
@Entity
@Table(name = "known_cause_change")
class CauseChange {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    long cause;

    @Column(updatable = false)
    int version;

    @Column(updatable = false)
    Instant at = Instant.EPOCH;

    @Column(updatable = false)
    String who = "";

    @Column(updatable = false)
    @Enumerated(EnumType.STRING)
    CauseEvent what = CauseEvent.PROPOSED;

    @Column(updatable = false)
    String reason = "";

    @Column(updatable = false)
    @Nullable
    Integer ticket;

    @Column(updatable = false)
    @Nullable
    String before;

    @Column(updatable = false)
    String after = "";
}
