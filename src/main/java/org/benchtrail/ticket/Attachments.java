package org.benchtrail.ticket;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The rows of attached files. */
@ApplicationScoped
class Attachments implements PanacheRepositoryBase<Attachment, String> {

    /** Stores the bytes unless they are there already, and names them by their SHA-256. */
    String keep(byte[] content) {
        String sha256 = sha256(content);
        if (!has(sha256)) {
            persist(new Attachment(sha256, content));
        }
        return sha256;
    }

    boolean has(String sha256) {
        return count("sha256", sha256) > 0;
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
