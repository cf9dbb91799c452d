package org.benchtrail.people;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** One line of the record of what was done to accounts: when, who, what, about whom. Never a secret. */
@Entity
@Immutable
@Table(name = "account_record")
class AccountRecord {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    Instant at = Instant.EPOCH;

    @Column(updatable = false)
    String who = "";

    @Column(updatable = false)
    String what = "";

    @Column(updatable = false)
    String about = "";

    @Column(updatable = false)
    String detail = "";

    @Column(updatable = false)
    String address = "";
}
