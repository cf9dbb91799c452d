package org.benchtrail.site;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import org.jspecify.annotations.Nullable;

/** People who work together. */
@Entity
class Team {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    String name = "";

    /** Accounts. */
    String[] members = {};

    boolean closed;
    int version = 1;
}
