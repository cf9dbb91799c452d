package org.benchtrail.people;

/** Bytes as letters and digits that people can type (RFC 4648, section 6), without padding. */
final class Base32 {
    private static final String ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
    private static final int BITS = 5;

    private Base32() {}

    static String of(byte[] bytes) {
        StringBuilder text = new StringBuilder();
        int held = 0;
        int bits = 0;
        for (byte one : bytes) {
            held = (held << 8) | (one & 0xff);
            bits += 8;
            while (bits >= BITS) {
                bits -= BITS;
                text.append(ALPHABET.charAt((held >> bits) & 31));
            }
        }
        return bits == 0
                ? text.toString()
                : text.append(ALPHABET.charAt((held << (BITS - bits)) & 31)).toString();
    }
}
