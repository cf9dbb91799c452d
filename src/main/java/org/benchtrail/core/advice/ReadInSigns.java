package org.benchtrail.core.advice;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;

/** What a device told of itself, beyond its readings: found by the keys that a read-in keeps in brackets. */
final class ReadInSigns {
    /** Quantity of the drive's own counter of transfers that had to be repeated. */
    static final String LINK_ERRORS = "interface errors, counted by the drive";

    private static final Duration APART = Duration.ofMinutes(10);
    private static final Pattern UPS = Pattern.compile("\\bUPS-MIB\\b");
    private static final Pattern DRIVE = Pattern.compile("\\b(SMART|NVMe|ATA)\\b");
    private static final Pattern WORN = Pattern.compile("available spare|attribute \\d+, normalised value");

    private static final Map<String, Pattern> KEYS = new LinkedHashMap<>();

    static {
        key(
                "ups-battery-bad",
                "\\((upsTestResultsSummary doneError|upsAlarmBatteryBad|upsAlarmDiagnosticTestFailed)\\)");
        key("ups-battery-low", "\\((upsBatteryStatus battery(Low|Depleted)|upsTestResultsSummary doneWarning)\\)");
        key("ups-overload", "\\(upsAlarmOutputOverload\\)");
        key("ups-input-bad", "\\((upsAlarmInputBad|upsOutputSource battery)\\)");
        key("ups-there", "\\(ups[A-Z]");
        key("supply-unhealthy", "\\(Redfish Status\\.Health of PowerSupplies\\)");
        key("drive-failing", "\\bDrive health, failing\\b");
        key("drive-suspect", "\\bDrive health, suspicious\\b");
    }

    private ReadInSigns() {}

    private static void key(String sign, String pattern) {
        KEYS.put("read-in/" + sign, Pattern.compile(pattern));
    }

    /** A sign with the fact that gives it. */
    record Given(StandingFact<? extends Fact> by, Sign sign) {}

    static List<Given> of(JobSheet sheet) {
        List<Given> signs = new ArrayList<>();
        for (StandingFact<FindingRecorded> found : sheet.all(FindingRecorded.class)) {
            KEYS.forEach((sign, key) -> {
                if (key.matcher(found.fact().text()).find()) {
                    signs.add(new Given(found, Sign.of(sign)));
                }
            });
        }
        List<StandingFact<ReadingRecorded>> readings = sheet.all(ReadingRecorded.class);
        for (StandingFact<ReadingRecorded> taken : readings) {
            reading(taken, readings, signs);
        }
        return signs;
    }

    private static void reading(
            StandingFact<ReadingRecorded> taken, List<StandingFact<ReadingRecorded>> all, List<Given> signs) {
        ReadingRecorded r = taken.fact();
        if (UPS.matcher(r.instrument()).find()) {
            signs.add(new Given(taken, Sign.of("read-in/ups-there")));
        }
        boolean worn = WORN.matcher(r.quantity()).find() && r.verdict() == ReadingVerdict.OUTSIDE;
        if (DRIVE.matcher(r.instrument()).find() && worn) {
            signs.add(new Given(taken, Sign.of("read-in/drive-failing")));
        }
        if (r.quantity().equals(LINK_ERRORS) && all.stream().anyMatch(earlier -> hasRisen(earlier, taken))) {
            signs.add(new Given(taken, Sign.of("read-in/crc-rising")));
        }
    }

    private static boolean hasRisen(StandingFact<ReadingRecorded> earlier, StandingFact<ReadingRecorded> now) {
        return earlier.fact().samePlace(now.fact())
                && !earlier.stamp().at().plus(APART).isAfter(now.stamp().at())
                && new BigDecimal(earlier.fact().value())
                                .compareTo(new BigDecimal(now.fact().value()))
                        < 0;
    }
}
