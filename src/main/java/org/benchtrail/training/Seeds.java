package org.benchtrail.training;

import java.security.SecureRandom;
import java.util.HexFormat;
import org.benchtrail.core.integrity.Commitment;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth;

/**
 * The seeds of a test of the coach, from the server's own randomness.
 *
 * @param order in hexadecimal; published with the plan
 * @param secret that devices are made from; opened at the end
 * @param salt of its commitment
 */
record Seeds(String order, byte[] secret, byte[] salt) {
    private static final String NAME = "training.devices";

    static Seeds drawn(SecureRandom random) {
        return new Seeds(
                HexFormat.of().formatHex(Commitment.secret(random)),
                Commitment.secret(random),
                Commitment.secret(random));
    }

    String commitment() {
        return commitment(secret, salt);
    }

    static String commitment(byte[] secret, byte[] salt) {
        return Commitment.of(salt, NAME, HexFormat.of().formatHex(secret)).toString();
    }

    /** The device of one turn: another one for every person, place and attempt, and for nobody twice. */
    static Truth device(byte[] secret, TrialStore.Turn turn, int attempt) {
        String label = turn.person() + "|" + turn.place() + "|" + attempt;
        return Truth.of(Family.valueOf(turn.family()), Chance.seed(secret, label));
    }
}
