package org.benchtrail.ticket.attachment;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.KeptFiles;

/** The rows of attached files. */
@Startup
@ApplicationScoped
class Attachments implements PanacheRepositoryBase<Attachment, String>, KeptFiles {
    private final String keep = SqlText.of(Attachments.class).statement("keep");
    private final String hashes = SqlText.of(Attachments.class).statement("hashes");
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

    private record Kept(String sha256, String now) {}

    @Override
    public Map<String, String> hashes(Collection<String> sha256) {
        return sha256.isEmpty()
                ? Map.of()
                : Sql.of(getEntityManager(), hashes)
                        .with("names", sha256.toArray(String[]::new))
                        .rows(Kept.class)
                        .stream()
                        .collect(Collectors.toMap(Kept::sha256, Kept::now));
    }

    static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
