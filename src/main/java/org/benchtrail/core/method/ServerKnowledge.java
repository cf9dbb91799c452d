package org.benchtrail.core.method;

import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.measure.Limit;

/** What the server knows better than whoever records a fact on a ticket. */
public interface ServerKnowledge {

    /**
     * Who works on tickets under that account.
     *
     * @throws org.benchtrail.core.Invalid on {@code to} if nobody does
     */
    Actor worker(String account);

    /**
     * Size of the kept file with that SHA-256, bytes.
     *
     * @throws org.benchtrail.core.Invalid on {@code sha256} if no such file is kept
     */
    int fileSize(String sha256);

    Policy policy();

    /**
     * Makes sure that a ticket may be named as the one that another is a duplicate of.
     *
     * @throws org.benchtrail.core.Invalid on {@code duplicateOf} if there is none, or it was itself cancelled as a duplicate
     */
    void requireOriginal(String ticket);

    /** The ticket's category. */
    Category category();

    /** The cautions against the dangers that the catalogue names for making that finding; empty if it names none. */
    Set<Caution> cautionsOfFinding(String finding);

    /** The limit of that finding where it depends on what the site has set; empty otherwise. */
    default Optional<Limit> limitOf(String finding) {
        return Optional.empty();
    }

    /** The limit of that quantity on the nameplate of the ticket's device; empty if it names none, or the device is not known. */
    default Optional<Limit> nameplateOf(String quantity) {
        return Optional.empty();
    }

    /** The cautions against the dangers that the catalogue names for the usual repair of the active theory. */
    Set<Caution> cautionsOfRepair();
}
