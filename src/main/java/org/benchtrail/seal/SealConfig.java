package org.benchtrail.seal;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** How the log is kept. */
@ConfigMapping(prefix = "benchtrail.seal")
public interface SealConfig {
    /**
     * The key that signs, outside the database and its backups; made at the first start if the file is not there and the log has no
     * key yet. Beside it stands the last note that was signed. Without it leaves are numbered and nothing is signed.
     */
    Optional<Path> keyFile();

    /** The key that follows: while both are named, both sign. */
    Optional<Path> nextKeyFile();

    /** Name of the log, for ever from the first signature on, such as {@code trail.shop.example/log}; made up if it is not given. */
    Optional<String> origin();

    /** Whose signatures are asked for, by C2SP tlog-policy; the witnesses with an address are shown every new head. */
    Optional<Path> policyFile();

    /** A folder that the log is written to after each checkpoint, best on another disk or machine. */
    Optional<Path> folder();

    /** Who stamps a head with the time once a day; nobody unless it is set. */
    Timestamp timestamp();

    /** An authority of time-stamps, by RFC 3161. */
    interface Timestamp {
        /** Where requests are posted to. */
        Optional<String> url();

        /** A file with the certificates of the roots that are trusted, in PEM. */
        Optional<Path> roots();
    }

    /** How often what was done meanwhile is sealed; nothing by itself at zero. */
    @WithDefault("PT5S")
    Duration every();

    /** How often the whole site is held against the log by itself; never at zero. */
    @WithDefault("P7D")
    Duration lookEvery();

    /** Who may read the log: its leaves show ticket numbers and how many acts each ticket has, and no content. */
    @WithDefault("TOKEN")
    Serving serve();

    /** Who may read the log. */
    enum Serving {
        /** Everybody. */
        OPEN,
        /** The checkpoint everybody, the rest whoever is signed in, a program by its token. */
        TOKEN,
        /** Nobody. */
        OFF
    }
}
