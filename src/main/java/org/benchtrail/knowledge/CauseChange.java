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
    /** What happened to it. */
    enum What {
        PROPOSED("proposed"),
        CONFIRMED("confirmed"),
        WITHDRAWN("a confirmation withdrawn"),
        FLAGGED("flagged"),
        CORRECTED("corrected"),
        RETIRED("retired"),
        BROUGHT_BACK("brought back"),
        MERGED("merged into another"),
        TOOK_IN("took another in"),
        SPLIT("split"),
        SPLIT_OFF("split off from another");

        private final String words;

        What(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

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
    What what = What.PROPOSED;

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
