package org.benchtrail.people;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.benchtrail.platform.LastUsed;

/** How many requests an account's programs may send in a minute; each server counts what comes to it. */
@Singleton
public class RequestRate {
    private static final Duration WINDOW = Duration.ofMinutes(1);
    private static final int KEPT = 10_000;

    /** What programs may ask of the API. */
    @ConfigMapping(prefix = "benchtrail.api")
    public interface ApiConfig {
        /** Requests of one account in a minute, on each server. */
        @WithDefault("1200")
        int requestsPerMinute();
    }

    private final int most;

    /** One that is forgotten begins anew, which gives nobody more than twice as many. */
    private final Map<String, Bucket> buckets = LastUsed.map(KEPT);

    RequestRate(ApiConfig config) {
        most = config.requestsPerMinute();
    }

    /**
     * Where an account stands after a request.
     *
     * @param isAnswered whether it is one of those that are
     * @param left how many more are answered at once
     * @param full seconds after which all are
     * @param next seconds after which one is; 0 if one is now
     */
    record Standing(boolean isAnswered, long left, long full, long next) {}

    Standing take(String account) {
        Bucket bucket = buckets.computeIfAbsent(
                account,
                a -> Bucket.builder()
                        .addLimit(limit -> limit.capacity(most).refillGreedy(most, WINDOW))
                        .build());
        ConsumptionProbe taken = bucket.tryConsumeAndReturnRemaining(1);
        return new Standing(
                taken.isConsumed(),
                taken.getRemainingTokens(),
                seconds(taken.getNanosToWaitForReset()),
                seconds(taken.getNanosToWaitForRefill()));
    }

    private static long seconds(long nanos) {
        return (long) Math.ceil((double) nanos / TimeUnit.SECONDS.toNanos(1));
    }

    /** The policy as a header tells it. */
    String policy() {
        return "\"requests\";q=" + most + ";w=" + WINDOW.toSeconds();
    }
}
