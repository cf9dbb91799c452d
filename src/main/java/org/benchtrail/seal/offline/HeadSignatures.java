package org.benchtrail.seal.offline;

import java.util.List;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy;
import org.jspecify.annotations.Nullable;

/** Who signed a head, by the policy of whoever asks. */
final class HeadSignatures {
    private HeadSignatures() {}

    static void look(SignedNote note, Checkpoint head, @Nullable WitnessPolicy policy, VerifyReport report) {
        if (policy == null) {
            report.tell("No policy was given, so nobody's signature was asked for.");
            return;
        }
        List<VerifierKey> logs = policy.logs().stream()
                .map(WitnessPolicy.Party::key)
                .filter(key -> key.name().equals(head.origin()))
                .toList();
        try {
            note.signers(logs);
            report.vouched(policy.vouching(note));
        } catch (IllegalArgumentException e) {
            report.found("signature", "checkpoint", String.valueOf(e.getMessage()));
        }
    }
}
