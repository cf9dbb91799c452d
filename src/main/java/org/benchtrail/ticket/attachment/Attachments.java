package org.benchtrail.ticket.attachment;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.KeptFiles;

/** The rows of attached files. */
@Startup
@ApplicationScoped
class Attachments implements PanacheRepositoryBase<Attachment, String>, KeptFiles {
    private final String keep = SqlText.of(Attachments.class).statement("keep");
    private final String size = SqlText.of(Attachments.class).statement("size");

    /** Stores the bytes unless they are there already, and names them by their SHA-256. */
    String keep(byte[] content) {
        String sha256 = sha256(content);
        Sql.of(getEntityManager(), keep)
                .with("sha256", sha256)
                .with("content", content)
                .run();
        return sha256;
    }

    @Override
    public Optional<Integer> size(String sha256) {
        return Sql.of(getEntityManager(), size).with("sha256", sha256).values(Integer.class).stream()
                .findFirst();
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
