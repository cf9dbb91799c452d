package org.benchtrail.core.bench.storage;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.HexFormat;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** 512 raw bytes as a drive hands them out; little-endian. A problem's field is the offset at which it lies. */
public final class Sector {
    static final int SIZE = 512;
    private static final int WORD = 2;

    private final byte[] bytes;

    private Sector(byte[] bytes) {
        this.bytes = bytes;
    }

    /** @throws Invalid if there are not exactly 512 bytes or every byte is the same */
    static Sector of(byte @Nullable [] raw) {
        if (raw == null || raw.length == 0) {
            throw new Invalid("offset 0", "there is nothing here: read the 512 bytes from the drive");
        }
        if (raw.length != SIZE) {
            throw new Invalid("offset " + Math.min(raw.length, SIZE), sizeSentence(raw.length));
        }
        Sector sector = new Sector(raw.clone());
        sector.refuseUniform();
        return sector;
    }

    private static String sizeSentence(int length) {
        return length < SIZE
                ? "cut short: " + length + " of 512 bytes; read the whole page again"
                : "too long: " + length + " bytes instead of 512; give this page alone";
    }

    private void refuseUniform() {
        for (byte b : bytes) {
            if (b != bytes[0]) {
                return;
            }
        }
        String each = HexFormat.of().toHexDigits(bytes[0]);
        throw new Invalid("offset 0", "every byte is " + each + ": the drive did not answer; read it again");
    }

    /**
     * Bytes written as pairs of hexadecimal digits, with blanks and line ends where one likes; a line may begin with its
     * offset and a colon.
     *
     * @throws Invalid if something else stands there
     */
    public static byte[] fromHex(String text) {
        String digits = text.replaceAll("(?m)^[ \\t]*+[0-9A-Fa-f]++:", "").replaceAll("\\s+", "");
        try {
            return HexFormat.of().parseHex(digits);
        } catch (IllegalArgumentException e) {
            throw new Invalid("offset " + firstBad(digits) / 2, "give pairs of hexadecimal digits 0-9 and a-f only");
        }
    }

    private static int firstBad(String digits) {
        int at = 0;
        while (at < digits.length() && HexFormat.isHexDigit(digits.charAt(at))) {
            at++;
        }
        return at;
    }

    int u8(int offset) {
        return bytes[offset] & 0xFF;
    }

    int u16(int offset) {
        return u8(offset) | (u8(offset + 1) << 8);
    }

    int u16Swapped(int offset) {
        return (u8(offset) << 8) | u8(offset + 1);
    }

    long u32(int offset) {
        return u16(offset) | ((long) u16(offset + 2) << 16);
    }

    long u48(int offset) {
        return u32(offset) | ((long) u16(offset + 4) << 32);
    }

    BigInteger u128(int offset) {
        byte[] big = new byte[16];
        for (int i = 0; i < big.length; i++) {
            big[i] = bytes[offset + big.length - 1 - i];
        }
        return new BigInteger(1, big);
    }

    /** The same sixteen bytes read from the other end. */
    BigInteger u128Swapped(int offset) {
        return new BigInteger(1, Arrays.copyOfRange(bytes, offset, offset + 16));
    }

    /** The sector with the two bytes of every word exchanged. */
    Sector wordSwapped() {
        byte[] swapped = new byte[SIZE];
        for (int i = 0; i < SIZE; i += WORD) {
            swapped[i] = bytes[i + 1];
            swapped[i + 1] = bytes[i];
        }
        return new Sector(swapped);
    }

    /** Sum of all bytes modulo 256: zero in a sector whose last byte is a two's-complement checksum. */
    int sum() {
        int sum = 0;
        for (byte b : bytes) {
            sum += b & 0xFF;
        }
        return sum & 0xFF;
    }
}
