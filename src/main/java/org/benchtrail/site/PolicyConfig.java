package org.benchtrail.site;

import io.quarkus.runtime.configuration.DurationConverter;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithConverter;
import io.smallrye.config.WithDefault;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.site.SiteRules;
import org.eclipse.microprofile.config.spi.Converter;
import org.jspecify.annotations.Nullable;

/**
 * What counts until an administrator decides something else on the page of the site, see {@link SiteBook}. A value that is none, or lies
 * outside what is allowed, stops the start with a message that names the setting, the value and what is allowed. Lengths of time are
 * written as {@code PT48H} or {@code P14D}.
 */
@ConfigMapping(prefix = "benchtrail.policy")
public interface PolicyConfig {
    /** A plan that costs more, in the site's currency, is approved by somebody else. 0 to 1,000,000,000; at 0 every plan that costs anything. */
    @WithDefault("250")
    @WithConverter(CostLimit.class)
    BigDecimal approvalCostLimit();

    /** How old the answer about data may be when an action touches storage. One minute to a year. */
    @WithDefault("PT24H")
    @WithConverter(MinuteToYear.class)
    Duration dataAnswerMaxAge();

    /** How long an intermittent fault runs clean before it is believed gone. One minute to a year, which is the longest run that can be recorded. */
    @WithDefault("PT48H")
    @WithConverter(MinuteToYear.class)
    Duration soakTime();

    /** How long after closing anyone who works tickets may reopen; later a supervisor may. None to ten years. */
    @WithDefault("P14D")
    @WithConverter(NoneToTenYears.class)
    Duration reopenWindow();

    /** How far from its limit a reading must lie before it is called within or outside, in standard uncertainties. 0 to 10; 0 ignores uncertainty. */
    @WithDefault("2")
    @WithConverter(GuardBand.class)
    BigDecimal guardBand();

    /** Nominal mains voltage of the place, V: 100, 120 or 230. Where it is not set, no reading of the mains is judged without a limit of its own. */
    @WithConverter(MainsVoltage.class)
    Optional<String> mains();

    /** The odds that a cause has to have before its repair is advised where tests are left, such as 3 for three to one. 1 to 99. */
    @WithDefault("3")
    @WithConverter(RepairOdds.class)
    BigDecimal repairOdds();

    /** Round the clock, with the hours that each priority has of itself. */
    default SiteRules rules() {
        return SiteRules.usual(mains().orElse(null), repairOdds(), policy());
    }

    default Policy policy() {
        return new Policy(approvalCostLimit(), dataAnswerMaxAge(), soakTime(), reopenWindow(), guardBand());
    }

    /** A number between bounds, both allowed. */
    abstract class Number implements Converter<BigDecimal> {
        private static final long serialVersionUID = 1L;

        private final BigDecimal least;
        private final BigDecimal most;

        Number(long least, long most) {
            this.least = BigDecimal.valueOf(least);
            this.most = BigDecimal.valueOf(most);
        }

        @Override
        public BigDecimal convert(String value) {
            try {
                BigDecimal number = new BigDecimal(value.strip());
                if (number.compareTo(least) >= 0 && number.compareTo(most) <= 0) {
                    return number;
                }
            } catch (NumberFormatException e) {
                throw refused(e);
            }
            throw refused(null);
        }

        private IllegalArgumentException refused(@Nullable Throwable cause) {
            return new IllegalArgumentException("Give a number from " + least + " to " + most + ".", cause);
        }
    }

    /** A length of time between bounds, both allowed. */
    abstract class Span implements Converter<Duration> {
        private static final long serialVersionUID = 1L;

        private final Duration least;
        private final Duration most;

        Span(Duration least, Duration most) {
            this.least = least;
            this.most = most;
        }

        @Override
        public Duration convert(String value) {
            try {
                Duration span = DurationConverter.parseDuration(value);
                if (span != null && span.compareTo(least) >= 0 && span.compareTo(most) <= 0) {
                    return span;
                }
            } catch (IllegalArgumentException e) {
                throw refused(e);
            }
            throw refused(null);
        }

        private IllegalArgumentException refused(@Nullable Throwable cause) {
            return new IllegalArgumentException(
                    "Give a length of time such as PT48H or P14D, from " + least + " to " + most + ".", cause);
        }
    }

    /** See {@link #approvalCostLimit}. */
    final class CostLimit extends Number {
        private static final long serialVersionUID = 1L;

        public CostLimit() {
            super(0, 1_000_000_000);
        }
    }

    /** See {@link #guardBand}. */
    final class GuardBand extends Number {
        private static final long serialVersionUID = 1L;

        public GuardBand() {
            super(0, 10);
        }
    }

    /** See {@link #repairOdds}. */
    final class RepairOdds extends Number {
        private static final long serialVersionUID = 1L;

        public RepairOdds() {
            super(1, 99);
        }
    }

    /** See {@link #mains}. */
    final class MainsVoltage implements Converter<String> {
        private static final long serialVersionUID = 1L;

        @Override
        public String convert(String value) {
            if (!Set.of("100", "120", "230").contains(value.strip())) {
                throw new IllegalArgumentException("Give 100, 120 or 230.");
            }
            return value.strip();
        }
    }

    /** See {@link #soakTime}. */
    final class MinuteToYear extends Span {
        private static final long serialVersionUID = 1L;

        public MinuteToYear() {
            super(Duration.ofMinutes(1), Duration.ofDays(365));
        }
    }

    /** See {@link #reopenWindow}. */
    final class NoneToTenYears extends Span {
        private static final long serialVersionUID = 1L;

        public NoneToTenYears() {
            super(Duration.ZERO, Duration.ofDays(3_650));
        }
    }
}
