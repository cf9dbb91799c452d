package org.benchtrail.core.bench.storage;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * The SMART / Health Information log page (identifier 02h) of an NVMe drive.
 *
 * <p>Source: NVM Express base specification, log page 02h, layout as in reference table 4.2 (seen in several independent
 * descriptions). Units: temperatures in kelvin as stored; data units of 512 000 bytes; times as named.
 *
 * @param warnings bits set in the critical warning byte
 * @param reservedWarningBits bits 6 and 7 of that byte, which the layout leaves open; 0 on most drives
 * @param compositeKelvin composite temperature, K
 * @param availableSpare remaining spare, 0 to 100 %
 * @param spareThreshold the spare below which the drive warns, 0 to 100 %
 * @param percentageUsed of the rated life, 0 to 255; may pass 100
 * @param dataUnitsRead thousands of 512-byte units, rounded up
 * @param dataUnitsWritten thousands of 512-byte units, rounded up
 * @param hostReads read commands
 * @param hostWrites write commands
 * @param busyMinutes controller busy time, min
 * @param powerCycles count
 * @param powerOnHours h
 * @param unsafeShutdowns count
 * @param mediaErrors media and data integrity errors, count
 * @param errorLogEntries count over the drive's life
 * @param warningTemperatureMinutes time above the warning temperature, min
 * @param criticalTemperatureMinutes time above the critical temperature, min
 * @param sensorsKelvin temperature sensors 1 to 8, K; 0 where there is none
 */
public record NvmeHealthLog(
        Set<Warning> warnings,
        int reservedWarningBits,
        int compositeKelvin,
        int availableSpare,
        int spareThreshold,
        int percentageUsed,
        BigInteger dataUnitsRead,
        BigInteger dataUnitsWritten,
        BigInteger hostReads,
        BigInteger hostWrites,
        BigInteger busyMinutes,
        BigInteger powerCycles,
        BigInteger powerOnHours,
        BigInteger unsafeShutdowns,
        BigInteger mediaErrors,
        BigInteger errorLogEntries,
        long warningTemperatureMinutes,
        long criticalTemperatureMinutes,
        List<Integer> sensorsKelvin) {

    /** Bits of the critical warning byte, in order from bit 0. */
    public enum Warning {
        SPARE_LOW("available spare is below its threshold"),
        TEMPERATURE("temperature is outside its threshold"),
        RELIABILITY("reliability is degraded by media or internal errors"),
        READ_ONLY("media is read-only"),
        BACKUP_FAILED("the backup of volatile memory failed"),
        MEMORY_REGION("the persistent memory region is read-only or unreliable");

        private final String sentence;

        Warning(String sentence) {
            this.sentence = sentence;
        }

        public String sentence() {
            return sentence;
        }
    }

    private static final int COLDEST = 173;
    private static final int HOTTEST = 473;
    private static final BigInteger UNIT_BYTES = BigInteger.valueOf(512_000);
    /** A counter beyond 64 bits has not been counted: a command each nanosecond takes 584 years to fill them. */
    private static final int COUNTER_BITS = 64;

    private static final BigInteger MOST_HOURS = BigInteger.valueOf(1_000_000);

    public NvmeHealthLog {
        warnings = Set.copyOf(warnings);
        sensorsKelvin = List.copyOf(sensorsKelvin);
    }

    /**
     * Reads the page.
     *
     * @param page exactly 512 bytes
     * @throws Invalid if the page is empty, cut short, too long, uniform, or holds what no drive can mean; the field is the
     *     offset
     */
    public static NvmeHealthLog parse(byte @Nullable [] page) {
        Sector s = Sector.of(page);
        refuseImpossible(s);
        return new NvmeHealthLog(
                warnings(s.u8(0)),
                s.u8(0) >> Warning.values().length,
                s.u16(1),
                s.u8(3),
                s.u8(4),
                s.u8(5),
                s.u128(32),
                s.u128(48),
                s.u128(64),
                s.u128(80),
                s.u128(96),
                s.u128(112),
                s.u128(128),
                s.u128(144),
                s.u128(160),
                s.u128(176),
                s.u32(192),
                s.u32(196),
                sensors(s));
    }

    private static Set<Warning> warnings(int bits) {
        EnumSet<Warning> set = EnumSet.noneOf(Warning.class);
        for (Warning warning : Warning.values()) {
            if (((bits >> warning.ordinal()) & 1) == 1) {
                set.add(warning);
            }
        }
        return set;
    }

    private static List<Integer> sensors(Sector s) {
        List<Integer> sensors = new ArrayList<>();
        for (int offset = 200; offset < 216; offset += 2) {
            sensors.add(s.u16(offset));
        }
        return sensors;
    }

    private static void refuseImpossible(Sector s) {
        Invalid.Collector found = new Invalid.Collector();
        found.require(isKelvin(s.u16(1)), "offset 1", temperatureSentence(s));
        percent(found, s, 3, "available spare");
        percent(found, s, 4, "spare threshold");
        counters(found, s);
        for (int offset = 200; offset < 216; offset += 2) {
            int sensor = s.u16(offset);
            found.require(
                    sensor == 0 || isKelvin(sensor),
                    "offset " + offset,
                    "a sensor at " + sensor + " K is not possible");
        }
        found.throwIfAny();
    }

    private static boolean isKelvin(int value) {
        return value >= COLDEST && value <= HOTTEST;
    }

    private static String temperatureSentence(Sector s) {
        String plain = "a composite temperature of " + s.u16(1) + " K is not possible";
        if (isKelvin(s.u16Swapped(1))) {
            return plain + "; read high byte first it would be " + s.u16Swapped(1)
                    + " K: the bytes are in the wrong order, read the page as little-endian";
        }
        int swapped = s.wordSwapped().u16(1);
        return isKelvin(swapped)
                ? plain + "; with the bytes of every word exchanged it would be " + swapped
                        + " K: read the page unexchanged"
                : plain + "; read the page again";
    }

    private static void percent(Invalid.Collector found, Sector s, int offset, String what) {
        found.require(
                s.u8(offset) <= 100, "offset " + offset, what + " of " + s.u8(offset) + " % is not possible: 0 to 100");
    }

    private static void counters(Invalid.Collector found, Sector s) {
        for (int offset = 32; offset < 192; offset += 16) {
            found.require(s.u128(offset).bitLength() <= COUNTER_BITS, "offset " + offset, counterSentence(s, offset));
        }
        BigInteger hours = s.u128(128);
        found.require(
                hours.bitLength() > COUNTER_BITS || hours.compareTo(MOST_HOURS) <= 0,
                "offset 128",
                hours + " power-on hours are more than a century: not possible");
    }

    private static String counterSentence(Sector s, int offset) {
        return s.u128Swapped(offset).bitLength() <= COUNTER_BITS
                ? "the 16-byte counter is in the wrong byte order: low byte first is expected"
                : "a counter beyond 64 bits is not possible: read the page again";
    }

    /** Kelvin less 273, the whole-number convention of the field. */
    public int compositeCelsius() {
        return compositeKelvin - 273;
    }

    /** At most this many bytes: the drive rounds a started unit of 512 000 bytes up. */
    public BigInteger bytesWritten() {
        return dataUnitsWritten.multiply(UNIT_BYTES);
    }

    public BigInteger bytesRead() {
        return dataUnitsRead.multiply(UNIT_BYTES);
    }
}
