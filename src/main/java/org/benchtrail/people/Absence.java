package org.benchtrail.people;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A time in which somebody is away and somebody else stands in. */
@Entity
class Absence {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    String account = "";

    @Column(updatable = false)
    Instant begins = Instant.EPOCH;

    /** The first moment after it. */
    @Column(updatable = false)
    Instant ends = Instant.EPOCH;

    @Column(updatable = false)
    String delegate = "";

    @Column(updatable = false)
    Instant noted = Instant.EPOCH;

    @Column(name = "noted_by", updatable = false)
    String notedBy = "";

    @Nullable
    Instant withdrawn;

    boolean covers(Instant moment) {
        return !moment.isBefore(begins) && moment.isBefore(ends);
    }
}
