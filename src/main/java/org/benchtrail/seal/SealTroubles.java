package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.core.integrity.WitnessPolicy.Vouching;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/**
 * What somebody has to see to about the log, as long as it is so and no longer. An incident stands until it is over: that nothing was
 * signed until a head is, what is not sealed as long as it is set aside, a broken trail until it is mended, which the alarms tell.
 */
@Startup
@ApplicationScoped
class SealTroubles {
    static final Duration TOO_LONG = Duration.ofMinutes(5);

    /** So long the witnesses may leave heads unsigned. */
    static final Duration NO_QUORUM = Duration.ofHours(24);

    private final EntityManager database;
    private final SealJob job;
    private final TimeStamping stamping;
    private final SealConfig config;
    private final Clock clock;
    private final SqlText text;

    SealTroubles(EntityManager database, SealJob job, TimeStamping stamping, SealConfig config, Clock clock) {
        this.database = database;
        this.job = job;
        this.stamping = stamping;
        this.config = config;
        this.clock = clock;
        text = SqlText.of(SealTroubles.class).having("standing", "unsigned by witnesses");
    }

    /**
     * What is so now.
     *
     * @param oldest when the oldest of what waits was put there
     * @param stuck how many records were set aside
     * @param incident place of the newest one that says that nothing is signed
     * @param at when that was, as its record says
     * @param signed when the newest head was
     * @param findings of the latest look
     */
    private record Standing(
            @Nullable Instant oldest,
            long stuck,
            @Nullable Long incident,
            @Nullable String sentence,
            @Nullable String at,
            @Nullable Instant signed,
            long findings) {}

    /** In sentences; none if all is well. */
    @Transactional
    List<String> all(ZoneId zone) {
        Standing now = standing();
        List<String> troubles = new ArrayList<>(notSigned(now));
        if (config.keyFile().isEmpty()) {
            troubles.add("No key is named in the settings, so nothing is signed.");
        }
        if (now.stuck() > 0) {
            troubles.add(
                    now.stuck() + " records do not go on where their stream ends, and are never sealed as they are.");
        }
        if (waitsTooLong(now)) {
            troubles.add("Something has waited to be sealed for " + age(now.oldest()) + ".");
        }
        troubles.addAll(quorum(zone));
        if (config.timestamp().url().isPresent()) {
            Duration without = stamping.without();
            if (without.compareTo(TimeStamping.TOO_LONG) >= 0) {
                troubles.add("No time-stamp for " + without.toDays() + " days.");
            }
        }
        if (now.findings() > 0) {
            troubles.add("The latest look at the whole site: " + places(now.findings()) + ".");
        }
        return troubles;
    }

    /** In a few words without names, for whoever watches the server; none if all is well. */
    @Transactional
    List<String> inShort() {
        Standing now = standing();
        List<String> troubles = new ArrayList<>();
        if (config.keyFile().isEmpty() || !notSigned(now).isEmpty()) {
            troubles.add("nothing is signed");
        }
        if (waitsTooLong(now)) {
            troubles.add("something has waited to be sealed for more than " + TOO_LONG.toMinutes() + " min");
        }
        if (!quorum(ZoneOffset.UTC).isEmpty()) {
            troubles.add("too few witnesses have signed for " + NO_QUORUM.toHours() + " h");
        }
        return troubles;
    }

    private Standing standing() {
        return Sql.of(database, text.statement("standing")).row(Standing.class).orElseThrow();
    }

    private List<String> notSigned(Standing now) {
        if (!job.stopped().isEmpty()) {
            return List.of("Nothing is signed. " + job.stopped());
        }
        return now.incident() != null && isSince(now.at(), now.signed())
                ? List.of("Incident " + now.incident() + ", and no head was signed since: " + now.sentence())
                : List.of();
    }

    /** What cannot be read any more is not over. */
    private static boolean isSince(@Nullable String at, @Nullable Instant signed) {
        try {
            return signed == null || !Instant.parse(String.valueOf(at)).isBefore(signed);
        } catch (DateTimeParseException altered) {
            return true;
        }
    }

    private boolean waitsTooLong(Standing now) {
        return now.oldest() != null
                && Duration.between(now.oldest(), clock.instant()).compareTo(TOO_LONG) > 0;
    }

    /** A head of a day ago, and whether the witness of that key has signed it or a later one, which vouches for it as well. */
    private record Unsigned(String key, long size, Instant at, boolean signed) {}

    private List<String> quorum(ZoneId zone) {
        if (config.policyFile().isEmpty()) {
            return List.of();
        }
        try {
            return quorum(
                    WitnessPolicy.parse(Files.readString(config.policyFile().get(), StandardCharsets.UTF_8)), zone);
        } catch (IOException | IllegalArgumentException e) {
            return List.of("The file of the witnesses cannot be read: " + e.getMessage());
        }
    }

    /** What is to be told of the witnesses that a policy asks for. */
    List<String> quorum(WitnessPolicy policy, ZoneId zone) {
        List<VerifierKey> keys = policy.witnesses().stream().map(Party::key).toList();
        List<Unsigned> asked = Sql.of(database, text.statement("unsigned by witnesses"))
                .with("before", clock.instant().minus(NO_QUORUM))
                .with("keys", keys.stream().map(VerifierKey::toString).toArray(String[]::new))
                .rows(Unsigned.class);
        Set<String> signed =
                asked.stream().filter(Unsigned::signed).map(Unsigned::key).collect(Collectors.toSet());
        Optional<Unsigned> head = asked.stream().findFirst();
        return head.isEmpty() || policy.vouching(key -> signed.contains(key.toString())) != Vouching.NOT_MET
                ? List.of()
                : List.of(
                        "Too few witnesses for more than " + NO_QUORUM.toHours() + " h: of those that the policy asks, "
                                + signed.size() + " of " + keys.size() + " have signed the head of "
                                + head.get().size() + " leaves of "
                                + Moments.text(head.get().at(), zone) + ", or a later one.");
    }

    /** How long something has lasted; empty if it has not begun. */
    String age(@Nullable Instant since) {
        if (since == null) {
            return "";
        }
        long seconds = Math.max(0, Duration.between(since, clock.instant()).toSeconds());
        return seconds < 120 ? seconds + " s" : seconds / 60 + " min";
    }

    static String places(long findings) {
        return findings == 1 ? "1 place does not hold" : findings + " places do not hold";
    }
}
