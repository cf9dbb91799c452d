package org.benchtrail.proposals;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.util.List;
import org.benchtrail.platform.NotFound;

/** The rows of proposals. */
@ApplicationScoped
class ProposalRows implements PanacheRepository<Proposal> {

    Proposal present(long id) {
        return findByIdOptional(id).orElseThrow(() -> new NotFound("proposal " + id));
    }

    /** The row, which nobody else can decide on until the transaction ends. */
    Proposal locked(long id) {
        return findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE).orElseThrow(() -> new NotFound("proposal " + id));
    }

    boolean waits(String kind, String change) {
        return count("kind = ?1 and change = ?2 and state = ?3", kind, change, ProposalState.OPEN) > 0;
    }

    /** How many wait that somebody else proposed. */
    long ofOthers(String account) {
        return count("state = ?1 and proposedBy <> ?2", ProposalState.OPEN, account);
    }

    /** The longest waiting first. */
    List<Proposal> open(int most) {
        return find("state = ?1 order by id", ProposalState.OPEN)
                .range(0, most - 1)
                .list();
    }

    /** The last decided first. */
    List<Proposal> decided(int most) {
        return find("state <> ?1 order by decidedAt desc, id desc", ProposalState.OPEN)
                .range(0, most - 1)
                .list();
    }
}
