package org.benchtrail.core.bench.network;

import java.math.BigInteger;
import java.util.Optional;
import java.util.function.Supplier;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Ask;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Citation;
import org.benchtrail.core.bench.InputCheck;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.Trade;

/**
 * The network of an address, whether a host may have that address, and whether another host shares it; IPv4 and IPv6.
 *
 * <p>Sources: RFC 4632 (prefixes), RFC 3021 (IPv4 /31), RFC 6890 (addresses with a special meaning), RFC 4291 (IPv6, with the
 * address of the routers at the start of each network), RFC 6164 (IPv6 /127), RFC 4193 (a site's own IPv6), RFC 5952 (how IPv6
 * is written).
 */
public final class Subnet {
    public record Input(
            @Ask(label = "Address", hint = "Such as 192.0.2.17 or 2001:db8::17; with /24 it gives the prefix as well")
            String address,

            @Ask(
                    label = "Prefix or mask",
                    hint = "Such as 24, 255.255.255.0 or 64; empty if it stands with the address")
            String mask,

            @Ask(
                    label = "Other host",
                    hint = "Its address, with its own prefix where it has one; empty if there is none")
            String other,

            @Ask(label = "Prefix or mask of the other host", hint = "Empty if it is the same")
            String otherMask) {
        private static final int LONGEST = 50;

        /** With the same prefix for both hosts. */
        public Input(String address, String mask, String other) {
            this(address, mask, other, "");
        }

        public Input {
            InputCheck check = new InputCheck();
            check.text("address", address, LONGEST);
            check.text("mask", mask, LONGEST);
            check.text("other", other, LONGEST);
            check.text("otherMask", otherMask, LONGEST);
            check.done();
            address = address.strip();
            mask = mask.strip();
            other = other.strip();
            otherMask = otherMask.strip();
            check(address, mask, other, otherMask);
        }

        private static void check(String address, String mask, String other, String otherMask) {
            Invalid.Collector found = new Invalid.Collector();
            Optional<Host> host = Host.read(found, "address", address, "mask", mask);
            found.require(
                    !mask.isEmpty() || address.contains("/"), "mask", "give the prefix, here or with the address");
            found.require(!other.isEmpty() || otherMask.isEmpty(), "other", "give its address too");
            if (!other.isEmpty()) {
                Optional<Host> second = Host.read(found, "other", other, "otherMask", otherMask);
                found.require(
                        host.isEmpty()
                                || second.isEmpty()
                                || host.get().ip().bits() == second.get().ip().bits(),
                        "other",
                        "give two addresses of one family: IPv4 and IPv6 share no network");
            }
            found.throwIfAny();
        }

        Host host() {
            return Host.read(new Invalid.Collector(), "address", address, "mask", mask)
                    .orElseThrow();
        }

        /** The other host, with the first one's prefix where it has none of its own. */
        Optional<Host> second() {
            return other.isEmpty()
                    ? Optional.empty()
                    : Host.read(new Invalid.Collector(), "other", other, "otherMask", otherMask)
                            .map(read -> read.prefix() == Host.UNKNOWN ? new Host(read.ip(), host().prefix()) : read);
        }
    }

    /** An address as it is set on a host: with the length of its network's prefix. */
    record Host(Ip ip, int prefix) {
        static final int UNKNOWN = -1;

        /** Empty if it cannot be read, which is then told. */
        static Optional<Host> read(
                Invalid.Collector found, String field, String address, String maskField, String mask) {
            String[] parts = address.split("/", 2);
            found.require(
                    parts.length == 1 || mask.isEmpty(), maskField, "give the prefix once: with the address or here");
            String prefix = parts.length == 1 ? mask : parts[1];
            String prefixField = parts.length == 1 ? maskField : field;
            boolean none = parts.length == 1 && mask.isEmpty();
            int bits = parts[0].contains(":") ? Ip.V6 : Ip.V4;
            Optional<Ip> ip = read(found, () -> Ip.parse(field, parts[0]));
            Optional<Integer> length =
                    none ? Optional.of(UNKNOWN) : read(found, () -> Ip.prefix(prefixField, prefix, bits));
            return ip.flatMap(read -> length.map(ones -> new Host(read, ones)));
        }

        private static <T> Optional<T> read(Invalid.Collector found, Supplier<T> reading) {
            try {
                return Optional.of(reading.get());
            } catch (Invalid e) {
                e.problems().forEach(p -> found.require(false, p.field(), p.sentence()));
                return Optional.empty();
            }
        }

        Ip network() {
            return ip.network(prefix);
        }

        /** Whether this host takes that address for a neighbour. */
        boolean reaches(Ip address) {
            return address.network(prefix).equals(network());
        }

        String inWords() {
            return ip + " is in " + network() + "/" + prefix;
        }

        /** Why no host may have this address; empty if one may. */
        Optional<Refused> refused() {
            Optional<SpecialAddress> special = SpecialAddress.of(ip).filter(s -> s.outcome() == Level.BAD);
            if (special.isPresent()) {
                return special.map(s -> new Refused(s.sentence(ip), s.source()));
            }
            if (ip.kept(prefix) == 0) {
                return Optional.empty();
            }
            if (ip.equals(network())) {
                return Optional.of(
                        ip.isV6()
                                ? new Refused(ip + " is the address of the network's routers.", V6)
                                : new Refused(ip + " is the network's own address.", V4));
            }
            return !ip.isV6() && ip.equals(ip.last(prefix))
                    ? Optional.of(new Refused(ip + " is the network's broadcast address.", V4))
                    : Optional.empty();
        }
    }

    record Refused(String sentence, Citation source) {}

    private static final Citation V4 = Citation.seen(
            "RFC 4632, Classless Inter-domain Routing: The Internet Address Assignment and Aggregation Plan");
    private static final Citation V6 = Citation.seen("RFC 4291, IP Version 6 Addressing Architecture");
    private static final Citation V4_PAIR =
            Citation.seen("RFC 3021, Using 31-Bit Prefixes on IPv4 Point-to-Point Links");
    private static final Citation V6_PAIR =
            Citation.fromMemory("RFC 6164, Using 127-Bit IPv6 Prefixes on Inter-Router Links");

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "subnet",
            3,
            Trade.NETWORK,
            "IP network",
            "Which network is this address in, may a host have it, and do these two hosts share it?",
            new Input("192.168.10.77", "255.255.255.192", "192.168.10.130"),
            Subnet::calculate);

    private Subnet() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        Host host = in.host();
        table(draft, host);
        figures(draft, host);
        Optional<Refused> refused = host.refused();
        if (refused.isPresent()) {
            return refuse(draft, "usable for a host", refused.get());
        }
        draft.rule("usable for a host", Level.GOOD, host.ip() + " may be given to a host.", source(host));
        return in.second().map(second -> together(draft, host, second)).orElseGet(() -> alone(draft, host));
    }

    private static Result refuse(ResultDraft draft, String rule, Refused refused) {
        draft.rule(rule, Level.BAD, refused.sentence(), refused.source());
        return draft.judged(Level.BAD, SpecialAddress.UNUSABLE, refused.sentence());
    }

    private static Citation source(Host host) {
        boolean pair = host.prefix() == host.ip().bits() - 1;
        return host.ip().isV6() ? (pair ? V6_PAIR : V6) : pair ? V4_PAIR : V4;
    }

    private static void table(ResultDraft draft, Host host) {
        Ip ip = host.ip();
        int prefix = host.prefix();
        Ip last = ip.last(prefix);
        if (!ip.isV6()) {
            draft.say("Mask", prefix + " ones, then zeros", ip.mask(prefix).toString());
            draft.rule("mask", Level.NONE, ip.mask(prefix).toString(), V4);
        }
        draft.say(
                "Network",
                "the first " + prefix + " bits, then zeros",
                ip + " AND " + ip.mask(prefix) + " = " + host.network());
        draft.say(
                "Last address",
                "the first " + prefix + " bits, then ones",
                host.network() + " + " + ip.total(prefix) + " - 1 = " + last);
        draft.rule("network", Level.NONE, host.network() + "/" + prefix, ip.isV6() ? V6 : V4);
        draft.rule("hosts", Level.NONE, range(host, last), source(host));
        draft.rule("broadcast", Level.NONE, ip.isV6() || prefix >= Ip.V4 - 1 ? "none" : last.toString(), source(host));
    }

    private static String range(Host host, Ip last) {
        int kept = host.ip().kept(host.prefix());
        Ip from = host.network().plus(kept == 0 ? 0 : 1);
        Ip to = last.plus(kept == 2 ? -1 : 0);
        return from.equals(to) ? from.toString() : from + " to " + to;
    }

    private static void figures(ResultDraft draft, Host host) {
        Ip ip = host.ip();
        int prefix = host.prefix();
        draft.figure("Prefix length", "count of ones in the mask", String.valueOf(prefix), prefix, "bit", 3);
        String all = "2^(" + ip.bits() + " - " + prefix + ")";
        double total = ip.total(prefix).doubleValue();
        draft.figure("Addresses in all", "2^(" + ip.bits() + " - prefix)", all, total, "1", 10);
        int kept = ip.kept(prefix);
        draft.figure(
                "Addresses for hosts",
                kept == 0 ? "all of them" : "all - " + kept,
                all + " - " + kept,
                total - kept,
                "1",
                10);
        SpecialAddress.note(ip).ifPresent(draft::assume);
        if (ip.isV6() && prefix != 64 && ip.kept(prefix) > 0) {
            draft.assume("Hosts that make their own address need a network with a prefix of 64 (RFC 4291).");
        }
    }

    private static Result alone(ResultDraft draft, Host host) {
        draft.assume("The prefix is the one set on the host; a wrong one breaks the path one way.");
        Optional<SpecialAddress> special = SpecialAddress.of(host.ip());
        if (special.isPresent()) {
            return draft.judged(
                    Level.CAREFUL, special.get().words(), special.get().sentence(host.ip()));
        }
        if (host.prefix() == 0) {
            return draft.judged(
                    Level.CAREFUL,
                    "takes every host for a neighbour",
                    "With a prefix of 0 the host asks no router for anything: it reaches nothing beyond its own link.");
        }
        String of = host.ip()
                        .total(host.prefix())
                        .subtract(BigInteger.valueOf(host.ip().kept(host.prefix()))) + " host addresses of "
                + host.network() + "/" + host.prefix() + ".";
        return draft.judged(Level.GOOD, "usable", host.ip() + " is one of " + of);
    }

    private static Result together(ResultDraft draft, Host host, Host other) {
        draft.say(
                "Network of the other host",
                "the first " + other.prefix() + " bits, then zeros",
                other.ip() + " AND " + other.ip().mask(other.prefix()) + " = " + other.network());
        if (host.ip().equals(other.ip())) {
            return draft.judged(
                    Level.BAD, "the same address", "Both hosts have " + host.ip() + ": they will disturb each other.");
        }
        Optional<Refused> refused = other.refused();
        if (refused.isPresent()) {
            return refuse(draft, "other usable for a host", refused.get());
        }
        draft.assume("Each host is set to the prefix given for it, both to the same where one was given.");
        String networks = host.inWords() + ", " + other.inWords().replace(" is in ", " in ");
        boolean there = host.reaches(other.ip());
        boolean back = other.reaches(host.ip());
        if (there != back) {
            Host one = there ? host : other;
            Host blind = there ? other : host;
            return draft.judged(
                    Level.BAD,
                    "one takes the other for a neighbour, not the other way round",
                    networks + ": " + one.ip() + " looks for " + blind.ip()
                            + " on its own link, which answers through a router. Set both to one prefix.");
        }
        if (!there) {
            return draft.judged(Level.CAREFUL, "different networks", networks + ": they need a router between them.");
        }
        return host.prefix() == other.prefix()
                ? draft.judged(Level.GOOD, "same network", networks + ".")
                : draft.judged(
                        Level.CAREFUL,
                        "neighbours with different masks",
                        networks + ": they reach each other, but not all of the rest. Set both to one prefix.");
    }
}
