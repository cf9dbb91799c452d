package org.benchtrail.ticket.attachment;

import org.benchtrail.ticket.KeptFiles;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/** The rows of attached files. */
@ApplicationScoped
class Attachments implements PanacheRepositoryBase<Attachment, String>, KeptFiles {

    /** Stores the bytes unless they are there already, and names them by their SHA-256. */
    String keep(byte[] content) {
        String sha256 = sha256(content);
        // not persist(): two who attach the same file at once must both succeed
        getEntityManager()
                .createNativeQuery("insert into attachment (sha256, content) values (?, ?) on conflict do nothing")
                .setParameter(1, sha256)
                .setParameter(2, content)
                .executeUpdate();
        return sha256;
    }

    @Override
    public Optional<Integer> size(String sha256) {
        List<?> found = getEntityManager()
                .createNativeQuery("select length(content) from attachment where sha256 = ?")
                .setParameter(1, sha256)
                .getResultList();
        return found.stream().findFirst().map(Integer.class::cast);
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
