package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.math.BigInteger;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.platform.Rounds;
import org.benchtrail.seal.timestamp.TimeStamp;
import org.benchtrail.seal.timestamp.TimeStampAnswer;
import org.benchtrail.seal.timestamp.TimeStampRefused;
import org.benchtrail.seal.timestamp.TimeStampRequest;
import org.jboss.logging.Logger;

/** Has the newest head stamped with the time once a day, by an authority that the settings name; beside everything else. */
@ApplicationScoped
class TimeStamping {
    /** Under this name its answers stand in the order of events, beside those of the witnesses. */
    static final String NAME = "time-stamps";

    /** After so long without one the page of the seal says so. */
    static final Duration TOO_LONG = Duration.ofDays(3);

    private static final Logger LOG = Logger.getLogger(TimeStamping.class);
    private static final Duration EACH = Duration.ofDays(1);
    private static final Duration LOOKED_FOR = Duration.ofMinutes(1);
    private static final long LONGEST_PAUSE_MIN = 60;
    private static final int NONCE_BITS = 64;
    private static final int LONGEST_DETAIL = 300;

    private final LogRows heads;
    private final TimeStampRows rows;
    private final WitnessRows events;
    private final SealConfig config;
    private final Clock clock;
    private final TimeStampPost post = new TimeStampPost();
    private final SecureRandom random = new SecureRandom();
    private final Rounds rounds = new Rounds("time-stamps");
    private long pauseMinutes;
    private Instant next = Instant.MIN;

    TimeStamping(LogRows heads, TimeStampRows rows, WitnessRows events, SealConfig config, Clock clock) {
        this.heads = heads;
        this.rows = rows;
        this.events = events;
        this.config = config;
        this.clock = clock;
    }

    void start(@Observes StartupEvent start) {
        Optional<TimeStampAuthority> authority = TimeStampAuthority.of(config.timestamp());
        if (authority.isPresent() && !config.every().isZero()) {
            rounds.begin(LOOKED_FOR, () -> round(authority.get()));
        }
    }

    void stop(@Observes ShutdownEvent stop) {
        rounds.end();
    }

    private void round(TimeStampAuthority authority) {
        try {
            askIfDue(authority);
        } catch (RuntimeException e) {
            LOG.warn("no time-stamp was asked for; it is tried again", e);
        }
    }

    /** How long it is since the last one, or since the first head where there is none; zero if the newest head has one. */
    Duration without() {
        Optional<TimeStampRows.Stamped> last = rows.newest(Long.MAX_VALUE);
        long stamped = last.map(TimeStampRows.Stamped::size).orElse(0L);
        if (heads.newest().filter(head -> head.size() > stamped).isEmpty()) {
            return Duration.ZERO;
        }
        Instant since = last.map(TimeStampRows.Stamped::at)
                .orElseGet(() -> heads.firstSigned().orElseThrow());
        return Duration.between(since, clock.instant());
    }

    /** Asks if the last one is a day old or there is none, and if the authority is not left alone for a while. */
    void askIfDue(TimeStampAuthority authority) {
        if (clock.instant().isBefore(next)) {
            return;
        }
        boolean due = QuarkusTransaction.requiringNew()
                .call(() -> rows.newest(Long.MAX_VALUE).isEmpty() || without().compareTo(EACH) >= 0);
        if (due) {
            Optional<LogRows.Signed> head = QuarkusTransaction.requiringNew().call(heads::newest);
            head.ifPresent(signed -> ask(authority, signed));
        }
    }

    private void ask(TimeStampAuthority authority, LogRows.Signed head) {
        Hash imprint = TimeStampRequest.imprint(SignedNote.parse(head.note()).text());
        BigInteger nonce = new BigInteger(NONCE_BITS, random);
        try {
            byte[] answer = post.send(authority.address(), new TimeStampRequest(imprint, nonce).der());
            TimeStampAnswer read = TimeStampAnswer.parse(answer);
            read.requireNonce(nonce);
            TimeStamp stamp = read.of(imprint, authority.roots());
            QuarkusTransaction.requiringNew().run(() -> {
                rows.keep(head.size(), stamp, answer);
                events.note(clock.instant(), NAME, head.size(), TimeStampPost.OK, "");
            });
            pauseMinutes = 0;
            next = Instant.MIN;
        } catch (IOException e) {
            failed(head, "No answer: " + e.getMessage());
        } catch (TimeStampRefused e) {
            failed(head, e.sentence());
        }
    }

    private void failed(LogRows.Signed head, String why) {
        pauseMinutes = Math.min(LONGEST_PAUSE_MIN, Math.max(1, pauseMinutes * 2));
        next = clock.instant().plus(Duration.ofMinutes(pauseMinutes));
        String detail = why.substring(0, Math.min(LONGEST_DETAIL, why.length()));
        QuarkusTransaction.requiringNew()
                .run(() -> events.note(clock.instant(), NAME, head.size(), TimeStampPost.NO_STAMP, detail));
    }
}
