package org.benchtrail.core.bench.network;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.Result.Level;

/**
 * A block of addresses with a meaning of its own.
 *
 * @param outcome bad where no host may have an address of it, careful where one has to know what it means
 * @param words the verdict on a host that has one
 * @param meaning follows "lies in ..., "
 */
record SpecialAddress(String network, Level outcome, String words, String meaning, Citation source) {
    static final String UNUSABLE = "not usable for a host";

    private static final Citation RFC_6890 = Citation.fromMemory("RFC 6890, Special-Purpose IP Address Registries");
    private static final Citation RFC_4291 = Citation.seen("RFC 4291, IP Version 6 Addressing Architecture");
    private static final Citation RFC_4193 = Citation.fromMemory("RFC 4193, Unique Local IPv6 Unicast Addresses");

    private static final List<SpecialAddress> ALL = List.of(
            unusable("0.0.0.0/8", "which stands for this network", RFC_6890),
            unusable("127.0.0.0/8", "which never leaves the machine", RFC_6890),
            unusable("224.0.0.0/4", "which is for groups", RFC_6890),
            unusable("240.0.0.0/4", "which is reserved", RFC_6890),
            careful(
                    "169.254.0.0/16",
                    "self-assigned",
                    "which a host takes by itself: it got no address from a server",
                    RFC_6890),
            unusable("::/128", "which stands for no address at all", RFC_4291),
            unusable("::1/128", "which never leaves the machine", RFC_4291),
            unusable("::ffff:0.0.0.0/96", "which stands for an IPv4 address inside programs", RFC_4291),
            unusable("ff00::/8", "which is for groups", RFC_4291),
            careful(
                    "fe80::/10",
                    "reaches its own link only",
                    "which no router passes on: every host has one besides its others",
                    RFC_4291),
            careful("fec0::/10", "no longer in use", "which is given up: new networks do not use it", RFC_4291),
            careful(
                    "fc00::/8",
                    "from a block without a use",
                    "for which no way of giving it out is laid down: a site takes its own from fd00::/8",
                    RFC_4193));

    private static final String OWN = "An address of the site's own (%s): routed inside the site, not on the internet.";
    private static final String EXAMPLE = "An address for examples in documents (%s): no host on the internet has it.";
    private static final String BENCHMARK =
            "An address for benchmarks of network devices (%s): not routed on the internet.";

    /** What is worth knowing of addresses that hosts may well have: the network, and what is said. */
    private static final List<Note> NOTES = List.of(
            new Note("10.0.0.0/8", OWN, "RFC 1918"),
            new Note("172.16.0.0/12", OWN, "RFC 1918"),
            new Note("192.168.0.0/16", OWN, "RFC 1918"),
            new Note("fd00::/8", OWN, "RFC 4193"),
            new Note(
                    "100.64.0.0/10",
                    "An address between a provider and its customers (%s): nobody on the internet reaches it.",
                    "RFC 6598"),
            new Note("192.0.0.0/24", "An address kept for protocols (%s): not given to hosts of a site.", "RFC 6890"),
            new Note("192.0.2.0/24", EXAMPLE, "RFC 5737"),
            new Note("198.51.100.0/24", EXAMPLE, "RFC 5737"),
            new Note("203.0.113.0/24", EXAMPLE, "RFC 5737"),
            new Note("2001:db8::/32", EXAMPLE, "RFC 3849"),
            new Note("3fff::/20", EXAMPLE, "RFC 9637"),
            new Note("198.18.0.0/15", BENCHMARK, "RFC 2544"),
            new Note("2001:2::/48", BENCHMARK, "RFC 5180"),
            new Note("192.88.99.0/24", "An address of relays that are given up (%s): no host needs it.", "RFC 7526"),
            new Note(
                    "64:ff9b::/96",
                    "An address that stands for an IPv4 host behind a translator (%s): a host of IPv6 has another.",
                    "RFC 6052"),
            new Note("100::/64", "An address whose packets are thrown away on purpose (%s).", "RFC 6666"),
            new Note(
                    "2001::/32",
                    "An address of a tunnel through IPv4 translation (%s): old and seldom meant.",
                    "RFC 4380"),
            new Note("2002::/16", "An address of a tunnel over IPv4 (%s): old and seldom meant.", "RFC 3056"));

    private record Note(String network, String sentence, String source) {}

    private static SpecialAddress unusable(String network, String meaning, Citation source) {
        return new SpecialAddress(network, Level.BAD, UNUSABLE, meaning, source);
    }

    private static SpecialAddress careful(String network, String words, String meaning, Citation source) {
        return new SpecialAddress(network, Level.CAREFUL, words, meaning, source);
    }

    /** The block that the address lies in; empty if it has no meaning beyond being an address. */
    static Optional<SpecialAddress> of(Ip ip) {
        return ALL.stream().filter(block -> ip.within(block.network)).findFirst();
    }

    /** What is worth knowing of an address that a host may have; empty for most. */
    static Optional<String> note(Ip ip) {
        return NOTES.stream()
                .filter(note -> ip.within(note.network))
                .map(note -> String.format(Locale.ROOT, note.sentence, note.source))
                .findFirst();
    }

    String sentence(Ip ip) {
        return ip + " lies in " + network + ", " + meaning + ".";
    }
}
