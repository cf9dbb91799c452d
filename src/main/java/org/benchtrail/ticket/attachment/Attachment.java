package org.benchtrail.ticket.attachment;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;

/** The bytes of a file, stored once under their SHA-256. */
@Entity
class Attachment {
    @Id
    @Column(updatable = false)
    String sha256 = "";

    @Column(updatable = false)
    byte[] content = {};

    protected Attachment() {}
}
