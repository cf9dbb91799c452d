package org.benchtrail.people;

import io.github.bucket4j.Bandwidth;
import io.github.bucket4j.BucketConfiguration;
import io.github.bucket4j.ConsumptionProbe;
import io.github.bucket4j.TimeMeter;
import io.github.bucket4j.distributed.BucketProxy;
import io.github.bucket4j.distributed.ExpirationAfterWriteStrategy;
import io.github.bucket4j.distributed.jdbc.PrimaryKeyMapper;
import io.github.bucket4j.postgresql.Bucket4jPostgreSQL;
import io.github.bucket4j.postgresql.PostgreSQLSelectForUpdateBasedProxyManager;
import jakarta.inject.Singleton;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Clock;
import java.time.Duration;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;

/**
 * How often wrong passwords and codes may be tried, kept in the database so that it holds on all nodes together.
 *
 * <p>A browser in which the account has signed in before has tries of its own. Strangers share others: so many from one address on one
 * account, so many from one address on all accounts, and so many on one account from everywhere. So nobody locks out another who comes
 * from a browser of theirs, and nobody at one address locks out anybody.
 */
@Singleton
class Tries {
    /** What counts from one address on one account is forgotten long before the whole account's is reached. */
    private static final int ACCOUNT_FACTOR = 20;

    private static final int SWEPT = 50;
    private static final int V6_NETWORK_BYTES = 8;

    private final PostgreSQLSelectForUpdateBasedProxyManager<String> buckets;
    private final SignInConfig config;

    Tries(DataSource database, Clock clock, SignInConfig config) {
        this.config = config;
        buckets = Bucket4jPostgreSQL.selectForUpdateBasedBuilder(database)
                .primaryKeyMapper(PrimaryKeyMapper.STRING)
                .table("throttle")
                .idColumn("id")
                .stateColumn("state")
                .expiresAtColumn("expires_at")
                .expirationAfterWrite(
                        ExpirationAfterWriteStrategy.basedOnTimeForRefillingBucketUpToMax(Duration.ofHours(1)))
                .clientClock(new WallClock(clock))
                .build();
    }

    /** The server's clock, which can be moved in tests; nodes agree on it as far as their clocks do. */
    private record WallClock(Clock clock) implements TimeMeter {
        @Override
        public long currentTimeNanos() {
            // not clock.millis(): a clock that ticks in microseconds divides by zero there
            return TimeUnit.MILLISECONDS.toNanos(clock.instant().toEpochMilli());
        }

        @Override
        public boolean isWallClockBased() {
            return true;
        }
    }

    /**
     * Tries that one request takes from.
     *
     * @param own what a right password gives back in full
     * @param shared what a right password gives back by one
     */
    record Of(Map<String, BucketConfiguration> own, Map<String, BucketConfiguration> shared) {}

    /** @param known hash of the browser, if the account has signed in in it before */
    Of signIn(String login, String address, Optional<byte[]> known) {
        if (known.isPresent()) {
            return new Of(Map.of("browser " + login + " " + hex(known.get()), few()), Map.of());
        }
        String network = network(address);
        Map<String, BucketConfiguration> shared = new LinkedHashMap<>();
        shared.put("address " + network, many(config.addressTries()));
        shared.put("account " + login, many(config.tries() * ACCOUNT_FACTOR));
        return new Of(Map.of("from " + network + " " + login, few()), shared);
    }

    /** Codes of a second factor, which only who has the password comes to try. */
    Of code(String login) {
        return new Of(Map.of("code " + login, few()), Map.of());
    }

    /**
     * Takes a try from each, before it is known whether it is a right one, so that many at once gain nothing.
     *
     * @return how many are left; -1 if there was none
     */
    long take(Of tries) {
        buckets.removeExpired(SWEPT);
        long left = Long.MAX_VALUE;
        for (Map<String, BucketConfiguration> some : List.of(tries.own(), tries.shared())) {
            for (Map.Entry<String, BucketConfiguration> one : some.entrySet()) {
                ConsumptionProbe taken = bucket(one).tryConsumeAndReturnRemaining(1);
                if (!taken.isConsumed()) {
                    return -1;
                }
                left = Math.min(left, taken.getRemainingTokens());
            }
        }
        return left;
    }

    /** It was a right one: it counts as no try. */
    void giveBack(Of tries) {
        tries.own().keySet().forEach(buckets::removeProxy);
        tries.shared().entrySet().forEach(one -> bucket(one).addTokens(1));
    }

    /** An administrator lets somebody try again. */
    void forget(String login) {
        buckets.removeProxy("account " + login);
        buckets.removeProxy("code " + login);
    }

    private BucketProxy bucket(Map.Entry<String, BucketConfiguration> one) {
        return buckets.getProxy(one.getKey(), one::getValue);
    }

    private BucketConfiguration few() {
        return of(config.tries(), config.firstLock());
    }

    private BucketConfiguration many(int tries) {
        return of(tries, Duration.ofHours(1));
    }

    /** So many at once, and then no more than that in the span. */
    private static BucketConfiguration of(int tries, Duration span) {
        return BucketConfiguration.builder()
                .addLimit(Bandwidth.builder()
                        .capacity(tries)
                        .refillIntervally(tries, span)
                        .build())
                .build();
    }

    /** The address, or the network of an IPv6 address that one household has to itself (64 bits). */
    static String network(String address) {
        if (!address.contains(":")) {
            return address;
        }
        try {
            byte[] bytes = InetAddress.getByName(address).getAddress();
            return bytes.length <= V6_NETWORK_BYTES
                    ? address
                    : HexFormat.of().formatHex(bytes, 0, V6_NETWORK_BYTES) + "/64";
        } catch (UnknownHostException noAddress) {
            return address;
        }
    }

    private static String hex(byte[] hash) {
        return HexFormat.of().formatHex(hash, 0, 16);
    }
}
