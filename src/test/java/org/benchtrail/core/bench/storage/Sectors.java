package org.benchtrail.core.bench.storage;

import java.util.HexFormat;

/** Sectors as a drive would hand them out, built byte by byte from the published layouts. */
public final class Sectors {
    private Sectors() {}

    /** A log page of a drive that raises no alarm. */
    public static byte[] nvme() {
        byte[] page = new byte[512];
        page[1] = 0x36;
        page[2] = 0x01;
        page[3] = 100;
        page[4] = 10;
        page[5] = 3;
        number(page, 32, 8, 2_000_000);
        number(page, 48, 8, 1_234_567);
        number(page, 64, 8, 77_000_000);
        number(page, 80, 8, 55_000_000);
        number(page, 96, 8, 900);
        number(page, 112, 8, 321);
        number(page, 128, 8, 8_765);
        number(page, 144, 8, 12);
        number(page, 176, 8, 40);
        number(page, 200, 2, 312);
        return page;
    }

    public static void number(byte[] page, int offset, int size, long value) {
        for (int i = 0; i < size; i++) {
            page[offset + i] = (byte) (value >> (8 * i));
        }
    }

    /** An attribute sector with rows of id, flags, value, worst, raw. */
    public static byte[] attributes(long[]... rows) {
        byte[] sector = new byte[512];
        sector[0] = 0x10;
        int at = 2;
        for (long[] row : rows) {
            sector[at] = (byte) row[0];
            number(sector, at + 1, 2, row[1]);
            sector[at + 3] = (byte) row[2];
            sector[at + 4] = (byte) row[3];
            number(sector, at + 5, 6, row[4]);
            at += 12;
        }
        return sealed(sector);
    }

    /** A threshold sector with rows of id, threshold. */
    public static byte[] thresholds(int[]... rows) {
        byte[] sector = new byte[512];
        sector[0] = 0x10;
        int at = 2;
        for (int[] row : rows) {
            sector[at] = (byte) row[0];
            sector[at + 1] = (byte) row[1];
            at += 12;
        }
        return sealed(sector);
    }

    /** Sets the last byte so that all bytes add up to 0 modulo 256. */
    public static byte[] sealed(byte[] sector) {
        int sum = 0;
        for (int i = 0; i < 511; i++) {
            sum += sector[i];
        }
        sector[511] = (byte) -sum;
        return sector;
    }

    public static byte[] swapped(byte[] sector) {
        byte[] result = new byte[sector.length];
        for (int i = 0; i < sector.length; i += 2) {
            result[i] = sector[i + 1];
            result[i + 1] = sector[i];
        }
        return result;
    }

    public static String hex(byte[] sector) {
        return HexFormat.ofDelimiter(" ").formatHex(sector);
    }
}
