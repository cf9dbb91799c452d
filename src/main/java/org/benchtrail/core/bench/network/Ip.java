package org.benchtrail.core.bench.network;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;

/**
 * An address of either family as a number from 0 to 2^bits - 1.
 *
 * <p>Sources: RFC 4632 (IPv4 prefixes), RFC 4291 section 2.2 (how an IPv6 address may be written), RFC 5952 (how it is written).
 *
 * @param bits 32 or 128
 */
record Ip(BigInteger value, int bits) {
    static final int V4 = 32;
    static final int V6 = 128;

    private static final int OCTETS = 4;
    private static final int GROUPS = 8;
    private static final int GROUP_BITS = 16;
    /** The upper 96 bits of an IPv4 address that stands in an IPv6 one. */
    private static final BigInteger MAPPED = BigInteger.valueOf(0xFFFF);

    /**
     * Four decimal octets with dots, leading zeros refused as some programs read them as octal; or, with a colon in it, groups of
     * up to four hexadecimal digits with at most one {@code ::}, the last two groups also as four octets.
     *
     * @throws Invalid if the text is not an address; the field is {@code field}
     */
    static Ip parse(String field, String text) {
        return text.contains(":") ? v6(field, text) : new Ip(v4(field, text), V4);
    }

    private static BigInteger v4(String field, String text) {
        String[] octets = text.split("\\.", -1);
        if (octets.length != OCTETS) {
            throw new Invalid(field, "give four numbers with dots between, such as 192.0.2.17, or groups with colons");
        }
        BigInteger value = BigInteger.ZERO;
        for (String octet : octets) {
            value = value.shiftLeft(8).or(BigInteger.valueOf(octet(field, octet)));
        }
        return value;
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

    private static Ip v6(String field, String text) {
        if (text.contains("%")) {
            throw new Invalid(field, "leave out the zone, from the % on: it is the machine's own name for a link");
        }
        int gap = text.indexOf("::");
        if (gap != text.lastIndexOf("::")) {
            throw new Invalid(field, "write :: only once: with two nobody can tell how many zeros each stands for");
        }
        List<Integer> head = groups(field, gap < 0 ? text : text.substring(0, gap));
        List<Integer> tail = groups(field, gap < 0 ? "" : text.substring(gap + 2));
        int missing = GROUPS - head.size() - tail.size();
        if (gap < 0 ? missing != 0 : missing < 1) {
            throw new Invalid(field, "give eight groups with colons between, or :: in place of those that are zero");
        }
        List<Integer> all = new ArrayList<>(head);
        IntStream.range(0, missing).forEach(i -> all.add(0));
        all.addAll(tail);
        BigInteger value = BigInteger.ZERO;
        for (int group : all) {
            value = value.shiftLeft(GROUP_BITS).or(BigInteger.valueOf(group));
        }
        return new Ip(value, V6);
    }

    private static List<Integer> groups(String field, String text) {
        List<Integer> groups = new ArrayList<>();
        if (text.isEmpty()) {
            return groups;
        }
        String[] parts = text.split(":", -1);
        for (int i = 0; i < parts.length; i++) {
            if (i == parts.length - 1 && parts[i].contains(".")) {
                int octets = v4(field, parts[i]).intValue();
                groups.addAll(List.of(octets >>> GROUP_BITS, octets & 0xFFFF));
            } else if (parts[i].matches("[0-9A-Fa-f]{1,4}")) {
                groups.add(Integer.parseInt(parts[i], 16));
            } else {
                throw new Invalid(field, "'" + parts[i] + "' is no group: give one to four hexadecimal digits");
            }
        }
        return groups;
    }

    /**
     * A prefix length of a family of so many bits, with or without a slash, or for IPv4 a mask whose ones stand together.
     *
     * @throws Invalid if it is neither
     */
    static int prefix(String field, String text, int bits) {
        String bare = text.startsWith("/") ? text.substring(1) : text;
        if (bare.matches("[0-9]|[1-9][0-9]{1,2}") && Integer.parseInt(bare) <= bits) {
            return Integer.parseInt(bare);
        }
        if (bits == V6) {
            throw new Invalid(field, "give a prefix from 0 to 128");
        }
        if (!bare.contains(".")) {
            throw new Invalid(field, "give a prefix from 0 to 32 or a mask such as 255.255.255.0");
        }
        Ip mask = new Ip(v4(field, bare), V4);
        int ones = mask.value.bitCount();
        if (!mask.equals(mask.mask(ones))) {
            throw new Invalid(field, "the ones of a mask stand together on the left; those of " + bare + " do not");
        }
        return ones;
    }

    boolean isV6() {
        return bits == V6;
    }

    /** So many ones, then zeros, in this family. */
    Ip mask(int prefix) {
        return new Ip(total(0).subtract(total(prefix)), bits);
    }

    /** Addresses in a network of this prefix. */
    BigInteger total(int prefix) {
        return BigInteger.ONE.shiftLeft(bits - prefix);
    }

    /** Addresses of a network that no host may have for their place in it: IPv4's first and last, IPv6's first, none on a link of two or one. */
    int kept(int prefix) {
        return prefix >= bits - 1 ? 0 : isV6() ? 1 : 2;
    }

    Ip network(int prefix) {
        return new Ip(value.and(mask(prefix).value), bits);
    }

    Ip last(int prefix) {
        return new Ip(network(prefix).value.add(total(prefix)).subtract(BigInteger.ONE), bits);
    }

    Ip plus(int more) {
        return new Ip(value.add(BigInteger.valueOf(more)), bits);
    }

    /** Whether it lies in that network, given as {@code fe80::/10}; never in one of the other family. */
    boolean within(String network) {
        String[] parts = network.split("/", 2);
        Ip start = parse("network", parts[0]);
        return start.bits == bits && network(Integer.parseInt(parts[1])).equals(start);
    }

    /** With dots; or with colons as RFC 5952 asks for: small letters, no leading zeros, the longest run of zero groups as {@code ::}. */
    @Override
    public String toString() {
        if (!isV6()) {
            return dotted(value.intValue());
        }
        if (value.shiftRight(V4).equals(MAPPED)) {
            return "::ffff:" + dotted(value.intValue());
        }
        int[] groups = IntStream.range(0, GROUPS)
                .map(i -> value.shiftRight(GROUP_BITS * (GROUPS - 1 - i)).intValue() & 0xFFFF)
                .toArray();
        int from = 0;
        int length = 1; // a single zero group is written out
        for (int i = 0; i < GROUPS; i++) {
            int run = zeros(groups, i);
            if (run > length) {
                from = i;
                length = run;
            }
        }
        return length == 1
                ? hex(groups)
                : hex(Arrays.copyOf(groups, from)) + "::" + hex(Arrays.copyOfRange(groups, from + length, GROUPS));
    }

    private static int zeros(int[] groups, int from) {
        int at = from;
        while (at < groups.length && groups[at] == 0) {
            at++;
        }
        return at - from;
    }

    private static String hex(int[] groups) {
        return Arrays.stream(groups).mapToObj(Integer::toHexString).collect(Collectors.joining(":"));
    }

    private static String dotted(int value) {
        return IntStream.of(24, 16, 8, 0)
                .mapToObj(shift -> String.valueOf((value >>> shift) & 0xFF))
                .collect(Collectors.joining("."));
    }
}
