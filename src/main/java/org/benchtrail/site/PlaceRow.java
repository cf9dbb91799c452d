package org.benchtrail.site;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.jspecify.annotations.Nullable;

/** Where devices stand and people work. */
@Entity
@Table(name = "place")
class PlaceRow {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    String name = "";

    /** Nominal voltage where it is not the site's, V. */
    @Nullable
    String mains;

    boolean closed;
    int version = 1;
}
