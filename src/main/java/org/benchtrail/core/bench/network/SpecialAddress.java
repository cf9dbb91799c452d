package org.benchtrail.core.bench.network;

import java.util.List;
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

    String sentence(Ip ip) {
        return ip + " lies in " + network + ", " + meaning + ".";
    }
}
