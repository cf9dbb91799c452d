package org.benchtrail.ticket.queue;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A filter of the queue that a person keeps under a name; nobody else sees it. */
@Entity
@Table(name = "saved_filter")
class SavedFilter {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    String owner = "";

    @Column(updatable = false)
    String name = "";

    String query = "";

    Instant kept = Instant.EPOCH;
}
