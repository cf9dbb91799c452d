package org.benchtrail.core.bench.network;

import org.benchtrail.core.Invalid;

/** An IPv4 address as a number from 0 to 2^32 - 1, held in a long so that it has no sign. */
record Ipv4(long value) {
    private static final int OCTETS = 4;
    private static final int BITS = 32;
    private static final long ALL = 0xFFFF_FFFFL;

    /**
     * Four decimal octets with dots; leading zeros are refused, as some programs read them as octal.
     *
     * @throws Invalid if the text is not an address; the field is {@code field}
     */
    static Ipv4 parse(String field, String text) {
        String[] octets = text.split("\\.", -1);
        if (octets.length != OCTETS) {
            throw new Invalid(field, "give four numbers with dots between, such as 192.0.2.17");
        }
        long value = 0;
        for (String octet : octets) {
            value = (value << 8) | octet(field, octet);
        }
        return new Ipv4(value);
    }

    private static int octet(String field, String text) {
        if (!text.matches("[0-9]{1,3}") || (text.length() > 1 && text.charAt(0) == '0')) {
            throw new Invalid(field, "'" + text + "' is no octet: give 0 to 255 in decimal without leading zeros");
        }
        int value = Integer.parseInt(text);
        if (value > 255) {
            throw new Invalid(field, "octet " + value + " is above 255");
        }
        return value;
    }

    /**
     * A prefix length (0 to 32, with or without a slash) or a mask whose ones stand together.
     *
     * @throws Invalid if it is neither
     */
    static int prefix(String field, String text) {
        String bare = text.startsWith("/") ? text.substring(1) : text;
        if (bare.matches("[0-9]|[12][0-9]|3[0-2]")) {
            return Integer.parseInt(bare);
        }
        if (!bare.contains(".")) {
            throw new Invalid(field, "give a prefix from 0 to 32 or a mask such as 255.255.255.0");
        }
        long mask = parse(field, bare).value();
        int ones = Long.bitCount(mask);
        if (mask != mask(ones)) {
            throw new Invalid(field, "the ones of a mask stand together on the left; those of " + bare + " do not");
        }
        return ones;
    }

    static long mask(int prefix) {
        return (ALL << (BITS - prefix)) & ALL;
    }

    /** Addresses in a network of this prefix: 2^(32 - prefix). */
    static long total(int prefix) {
        return 1L << (BITS - prefix);
    }

    /** Addresses hosts can have: two fewer, but both of a /31 (RFC 3021) and the one of a /32. */
    static long usable(int prefix) {
        return prefix >= 31 ? total(prefix) : total(prefix) - 2;
    }

    Ipv4 network(int prefix) {
        return new Ipv4(value & mask(prefix));
    }

    Ipv4 last(int prefix) {
        return new Ipv4(value | (~mask(prefix) & ALL));
    }

    boolean within(String network, int prefix) {
        return network(prefix).value == parse("network", network).value;
    }

    @Override
    public String toString() {
        return (value >> 24) + "." + ((value >> 16) & 0xFF) + "." + ((value >> 8) & 0xFF) + "." + (value & 0xFF);
    }
}
