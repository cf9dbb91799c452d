package org.benchtrail.seal;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** The settings of the test, with a policy of witnesses that a test names, and another place for the key where it asks for one. */
record AskingConfig(SealConfig real, Path policy, Optional<Path> keyFile) implements SealConfig {
    AskingConfig(SealConfig real, Path policy) {
        this(real, policy, real.keyFile());
    }

    @Override
    public Optional<Path> nextKeyFile() {
        return real.nextKeyFile();
    }

    @Override
    public Optional<String> origin() {
        return real.origin();
    }

    @Override
    public Optional<Path> policyFile() {
        return Optional.of(policy);
    }

    @Override
    public Optional<Path> folder() {
        return real.folder();
    }

    @Override
    public Timestamp timestamp() {
        return real.timestamp();
    }

    @Override
    public Duration every() {
        return real.every();
    }

    @Override
    public Duration lookEvery() {
        return real.lookEvery();
    }

    @Override
    public Serving serve() {
        return real.serve();
    }
}
