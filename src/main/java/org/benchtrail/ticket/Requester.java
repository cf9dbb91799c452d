package org.benchtrail.ticket;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** Who reported a trouble. Personal data stand here only, so that they can be erased without touching the trail. */
@Entity
class Requester {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    String name = "";
    String contact = "";

    @Nullable
    Instant erased;

    protected Requester() {}

    Requester(String name, String contact) {
        this.name = name;
        this.contact = contact;
    }
}
