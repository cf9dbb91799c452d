package org.benchtrail.seal.witness;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.seal.KeyFile;

/** A witness that answers on this machine, for tests of the log that asks it. */
public final class ServedWitness implements AutoCloseable {
    private final VerifierKey key;
    private final WitnessCommand.Started started;

    /** @param log key of the log that it knows */
    public ServedWitness(Path folder, String log, Clock clock) throws IOException, KeyFile.Unusable {
        this(folder, log, clock, "witness.example/w1");
    }

    /** @param name of its key */
    public ServedWitness(Path folder, String log, Clock clock, String name) throws IOException, KeyFile.Unusable {
        key = WitnessCommand.make(folder, name);
        Files.writeString(folder.resolve("policy"), "log " + log + "\nquorum none\n");
        started = WitnessCommand.serve(WitnessCommand.open(folder, clock), "127.0.0.1", "0");
    }

    /** As a policy names it. */
    public Party party() {
        return new Party(key, "http://127.0.0.1:" + started.port());
    }

    @Override
    public void close() {
        started.server().stop(0);
    }
}
