package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.integrity.SeenTimes;
import org.benchtrail.core.integrity.WitnessPolicy;
import org.benchtrail.core.integrity.WitnessPolicy.Vouching;
import org.benchtrail.seal.VerificationRows.Finding;

/** Whether so many witnesses as the site's own policy asks for have signed what is there. */
@ApplicationScoped
class QuorumLook {
    /** A head that another follows soon need not be signed by a witness; one of those of the last minutes has to be. */
    private static final int MOST = 200;

    private final LogRows rows;
    private final SealConfig config;
    private final Clock clock;

    QuorumLook(LogRows rows, SealConfig config, Clock clock) {
        this.rows = rows;
        this.config = config;
        this.clock = clock;
    }

    List<Finding> look() {
        Optional<Path> file = config.policyFile();
        if (file.isEmpty()) {
            return List.of();
        }
        try {
            return look(WitnessPolicy.parse(Files.readString(file.get(), StandardCharsets.UTF_8)));
        } catch (IOException | IllegalArgumentException e) {
            return List.of(
                    new Finding("quorum", "policy", "The file of the witnesses cannot be read: " + e.getMessage()));
        }
    }

    List<Finding> look(WitnessPolicy policy) {
        return QuarkusTransaction.requiringNew().call(() -> {
            List<LogRows.Signed> heads = rows.headsFrom(Long.MAX_VALUE, MOST);
            Instant due = clock.instant().minus(SeenTimes.UNSEALED);
            List<Vouching> vouched = new ArrayList<>();
            for (LogRows.Signed head : heads) {
                vouched.add(vouching(policy, head));
                if (!head.signedAt().isAfter(due)) {
                    return found(head, vouched);
                }
            }
            return List.of();
        });
    }

    /** @param vouched of the newest heads, down to one that should long have been signed */
    private static List<Finding> found(LogRows.Signed head, List<Vouching> vouched) {
        if (vouched.contains(Vouching.MET) || vouched.contains(Vouching.NOBODY_ASKED)) {
            return List.of();
        }
        return List.of(new Finding(
                "quorum",
                "head of " + head.size(),
                vouched.contains(Vouching.CANNOT_TELL)
                        ? "Whether enough witnesses of the site's policy signed it cannot be told here."
                        : "Too few of the witnesses that the site's policy names signed it, or a later one."));
    }

    private Vouching vouching(WitnessPolicy policy, LogRows.Signed head) {
        try {
            return policy.vouching(rows.note(head));
        } catch (IllegalArgumentException altered) {
            return Vouching.NOT_MET;
        }
    }
}
