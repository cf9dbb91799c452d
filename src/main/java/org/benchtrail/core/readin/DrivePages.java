package org.benchtrail.core.readin;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.bench.storage.AtaAttributes;
import org.benchtrail.core.bench.storage.AtaAttributes.Attribute;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.bench.storage.DriveHealth.Form;
import org.benchtrail.core.bench.storage.NvmeHealthLog;
import org.benchtrail.core.measure.Provenance;
import org.jspecify.annotations.Nullable;

/**
 * What a drive says about itself, as readings; the bench's calculation of drive health judges.
 *
 * <p>Sources: NVM Express log page 02h; ATA/ATAPI-5 SMART and SFF-8035i. A problem's field is the offset or the row.
 */
public final class DrivePages {
    private static final String NVME = "NVMe log page 02h";
    private static final String ATA = "ATA SMART attributes";
    private static final int TERA = 12;
    private static final int SECTOR = 512;
    private static final int LINK_ERRORS = 199;
    private static final int TEMPERATURE = 194;

    private DrivePages() {}

    /**
     * @param page exactly 512 bytes
     * @throws org.benchtrail.core.Invalid as {@link NvmeHealthLog#parse}
     */
    public static ReadIn nvme(byte[] page, About about) {
        NvmeHealthLog log = NvmeHealthLog.parse(page);
        Draft draft = new Draft(Kind.NVME_PAGE, or(about.device(), "NVMe drive"), NVME);
        wear(draft, log);
        temperatures(draft, log);
        counters(draft, log);
        draft.driveHealth(DriveHealth.calculate(
                new DriveHealth.Input(Form.NVME_PAGE, HexFormat.of().formatHex(page), "", 0, List.of())));
        return draft.done();
    }

    private static void wear(Draft draft, NvmeHealthLog log) {
        Bounds spare = Bounds.atLeast(log.spareThreshold(), "the drive's own threshold (" + NVME + ", byte 4)");
        draft.reading("offset 3", "available spare", BigDecimal.valueOf(log.availableSpare()), "%", "", spare);
        Bounds life = Bounds.atMost(99, "less than the whole rated life (" + NVME + ", byte 5)");
        draft.reading("offset 5", "percentage used", BigDecimal.valueOf(log.percentageUsed()), "%", "", life);
        Bounds none = Bounds.atMost(0, Provenance.COMMON_PRACTICE.words());
        draft.reading("offset 160", "media and data integrity errors", whole(log.mediaErrors()), "count", "", none);
    }

    private static void temperatures(Draft draft, NvmeHealthLog log) {
        celsius(draft, "offset 1", log.compositeKelvin(), "composite");
        List<Integer> sensors = log.sensorsKelvin();
        for (int i = 0; i < sensors.size(); i++) {
            if (sensors.get(i) != 0) {
                celsius(draft, "offset " + (200 + 2 * i), sensors.get(i), "sensor " + (i + 1));
            }
        }
        String absent = IntStream.range(0, sensors.size())
                .filter(i -> sensors.get(i) == 0)
                .mapToObj(i -> Integer.toString(i + 1))
                .collect(Collectors.joining(", "));
        if (!absent.isEmpty()) {
            draft.skip("Temperature sensors " + absent + ": not fitted (0).");
        }
    }

    /** The field holds whole kelvin; 273 is taken off, as its convention has it. */
    private static void celsius(Draft draft, String place, int kelvin, String point) {
        draft.reading(place, "temperature", BigDecimal.valueOf(kelvin - 273L), "°C", point, Bounds.NONE);
    }

    private static void counters(Draft draft, NvmeHealthLog log) {
        draft.reading("offset 32", "data read, at most", tera(log.bytesRead()), "TB", "", Bounds.NONE);
        draft.reading("offset 48", "data written, at most", tera(log.bytesWritten()), "TB", "", Bounds.NONE);
        draft.reading("offset 112", "power cycles", whole(log.powerCycles()), "count", "", Bounds.NONE);
        draft.reading("offset 128", "power-on time", whole(log.powerOnHours()), "h", "", Bounds.NONE);
        draft.reading("offset 144", "unsafe shutdowns", whole(log.unsafeShutdowns()), "count", "", Bounds.NONE);
        draft.reading("offset 176", "error log entries", whole(log.errorLogEntries()), "count", "", Bounds.NONE);
        minutes(draft, "offset 192", "warning", log.warningTemperatureMinutes());
        minutes(draft, "offset 196", "critical", log.criticalTemperatureMinutes());
    }

    private static void minutes(Draft draft, String place, String which, long minutes) {
        String quantity = "time above the " + which + " temperature";
        draft.reading(place, quantity, BigDecimal.valueOf(minutes), "min", "", Bounds.NONE);
    }

    private static BigDecimal whole(BigInteger counter) {
        return new BigDecimal(counter);
    }

    private static BigDecimal tera(BigInteger bytes) {
        return new BigDecimal(bytes, TERA).stripTrailingZeros();
    }

    /**
     * @param sectors 512 bytes of attributes, or 1024 with the thresholds behind them
     * @throws org.benchtrail.core.Invalid as {@link AtaAttributes#parse}
     */
    public static ReadIn ata(byte[] sectors, About about) {
        boolean both = sectors.length == 2 * SECTOR;
        byte[] data = both ? Arrays.copyOf(sectors, SECTOR) : sectors;
        byte @Nullable [] limits = both ? Arrays.copyOfRange(sectors, SECTOR, 2 * SECTOR) : null;
        AtaAttributes table = AtaAttributes.parse(data, limits);
        HexFormat hex = HexFormat.of();
        return attributes(
                Kind.ATA_PAGE,
                table,
                new DriveHealth.Input(
                        Form.ATA_SECTOR,
                        hex.formatHex(data),
                        limits == null ? "" : hex.formatHex(limits),
                        0,
                        List.of()),
                about);
    }

    /**
     * @param text lines of: id value worst threshold raw
     * @throws org.benchtrail.core.Invalid as {@link AtaAttributes#parseRows}
     */
    public static ReadIn ataRows(String text, About about) {
        AtaAttributes table = AtaAttributes.parseRows(text);
        String rows = table.rows().stream().map(DrivePages::typed).collect(Collectors.joining("\n"));
        return attributes(Kind.ATA_ROWS, table, new DriveHealth.Input(Form.ATA_ROWS, rows, "", 0, List.of()), about);
    }

    private static String typed(Attribute a) {
        return String.format(Locale.ROOT, "%d %d %d %d %d", a.id(), a.value(), a.worst(), a.threshold(), a.raw());
    }

    private static ReadIn attributes(Kind kind, AtaAttributes table, DriveHealth.Input input, About about) {
        Draft draft = new Draft(kind, or(about.device(), "ATA drive"), ATA);
        int row = 0;
        for (Attribute attribute : table.rows()) {
            row++;
            attribute(draft, "row " + row, attribute);
        }
        draft.driveHealth(DriveHealth.calculate(input));
        return draft.done();
    }

    private static void attribute(Draft draft, String place, Attribute a) {
        String counted = DriveHealth.WATCHED.get(a.id());
        if (counted != null) {
            Bounds none = Bounds.atMost(
                    0, "any is to be looked into: Failure Trends in a Large Disk Drive Population, USENIX FAST 2007");
            draft.reading(place, counted, BigDecimal.valueOf(a.raw()), "count", "", none);
        }
        boolean link = a.id() == LINK_ERRORS;
        if (link) {
            draft.reading(
                    place,
                    "interface errors, counted by the drive",
                    BigDecimal.valueOf(a.raw()),
                    "count",
                    "",
                    Bounds.NONE);
        }
        long degrees = a.raw() & 0xFF;
        boolean warm = a.id() == TEMPERATURE && degrees > 0;
        if (warm) {
            draft.reading(
                    place,
                    "temperature",
                    BigDecimal.valueOf(degrees),
                    "°C",
                    "lowest byte of attribute 194",
                    Bounds.NONE);
        }
        if (a.threshold() > 0) {
            Bounds above = Bounds.atLeast(a.threshold() + 1L, "above the drive's own threshold of " + a.threshold());
            String quantity = "attribute " + a.id() + ", normalised value";
            draft.reading(place, quantity, BigDecimal.valueOf(a.value()), "points", "", above);
        } else if (counted == null && !warm && !link) {
            draft.skip("Attribute " + a.id() + ": value " + a.value() + ", raw " + a.raw()
                    + (a.threshold() == 0 ? "; it never fails (threshold 0)." : "; its threshold is not known."));
        }
    }

    private static String or(String given, String usual) {
        return given.isEmpty() ? usual : given;
    }
}
