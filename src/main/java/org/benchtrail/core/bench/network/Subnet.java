package org.benchtrail.core.bench.network;

import static org.benchtrail.core.bench.Numeral.of;

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
 * The network of an IPv4 address, whether a host may have that address, and whether another host shares it.
 *
 * <p>Sources: RFC 4632 (prefixes), RFC 3021 (/31), RFC 6890 (addresses with a special meaning).
 */
public final class Subnet {
    public record Input(
            @Ask(label = "Address", hint = "Such as 192.0.2.17; 192.0.2.17/24 gives the prefix as well")
            String address,

            @Ask(label = "Prefix or mask", hint = "Such as 24 or 255.255.255.0; empty if it stands with the address")
            String mask,

            @Ask(label = "Other host", hint = "Empty if there is none")
            String other) {
        private static final int LONGEST = 40;

        public Input {
            InputCheck check = new InputCheck();
            check.text("address", address, LONGEST);
            check.text("mask", mask, LONGEST);
            check.text("other", other, LONGEST);
            check.done();
            address = address.strip();
            mask = mask.strip();
            other = other.strip();
            read(address, mask, other);
        }

        private static void read(String address, String mask, String other) {
            Invalid.Collector found = new Invalid.Collector();
            boolean both = address.contains("/") && !mask.isEmpty();
            found.require(!both, "mask", "give the prefix once: with the address or here");
            collect(found, () -> Ipv4.parse("address", host(address)));
            collect(found, () -> Ipv4.prefix(address.contains("/") ? "address" : "mask", prefixText(address, mask)));
            if (!other.isEmpty()) {
                collect(found, () -> Ipv4.parse("other", other));
            }
            found.throwIfAny();
        }

        private static void collect(Invalid.Collector found, Runnable reading) {
            try {
                reading.run();
            } catch (Invalid e) {
                e.problems().forEach(p -> found.require(false, p.field(), p.sentence()));
            }
        }

        private static String host(String address) {
            int slash = address.indexOf('/');
            return slash < 0 ? address : address.substring(0, slash);
        }

        private static String prefixText(String address, String mask) {
            int slash = address.indexOf('/');
            return slash < 0 ? mask : address.substring(slash + 1);
        }

        Ipv4 ip() {
            return Ipv4.parse("address", host(address));
        }

        int prefix() {
            return Ipv4.prefix("mask", prefixText(address, mask));
        }
    }

    private static final Citation SOURCE = Citation.seen("RFC 4632");
    private static final Citation POINT = Citation.seen("RFC 3021");
    private static final Citation SPECIAL = Citation.fromMemory("RFC 6890");

    public static final Calculation<Input> CALCULATION = new Calculation<>(
            "subnet",
            1,
            Trade.NETWORK,
            "IPv4 network",
            "Which network is this address in, may a host have it, and do these two hosts share it?",
            new Input("192.168.10.77", "255.255.255.192", "192.168.10.130"),
            Subnet::calculate);

    private Subnet() {}

    public static Result calculate(Input in) {
        ResultDraft draft = new ResultDraft();
        Ipv4 ip = in.ip();
        int prefix = in.prefix();
        table(draft, ip, prefix);
        figures(draft, prefix);
        draft.assume("Both hosts are set to this prefix; a wrong mask on either breaks the path one way.");
        String wrong = objection(ip, prefix);
        if (!wrong.isEmpty()) {
            draft.rule("usable for a host", Level.BAD, wrong, SPECIAL);
            return draft.judged(Level.BAD, "not usable for a host", wrong);
        }
        draft.rule("usable for a host", Level.GOOD, ip + " may be given to a host.", prefix == 31 ? POINT : SOURCE);
        return in.other().isEmpty() ? alone(draft, ip, prefix) : together(draft, in, ip, prefix);
    }

    private static void table(ResultDraft draft, Ipv4 ip, int prefix) {
        Ipv4 mask = new Ipv4(Ipv4.mask(prefix));
        Ipv4 network = ip.network(prefix);
        Ipv4 last = ip.last(prefix);
        draft.say("Mask", prefix + " ones, then zeros", mask.toString());
        draft.say("Network", "address AND mask", ip + " AND " + mask + " = " + network);
        draft.say(
                "Last address",
                "network OR the mask turned round",
                network + " + " + of(Ipv4.total(prefix), 10) + " - 1 = " + last);
        draft.rule("mask", Level.NONE, mask.toString(), SOURCE);
        draft.rule("network", Level.NONE, network + "/" + prefix, SOURCE);
        draft.rule("hosts", Level.NONE, range(network, last, prefix), prefix == 31 ? POINT : SOURCE);
        draft.rule("broadcast", Level.NONE, prefix >= 31 ? "none" : last.toString(), prefix == 31 ? POINT : SOURCE);
    }

    private static String range(Ipv4 network, Ipv4 last, int prefix) {
        if (prefix == 32) {
            return network.toString();
        }
        int inset = prefix == 31 ? 0 : 1;
        return new Ipv4(network.value() + inset) + " to " + new Ipv4(last.value() - inset);
    }

    private static void figures(ResultDraft draft, int prefix) {
        draft.figure("Prefix length", "count of ones in the mask", String.valueOf(prefix), prefix, "bit", 3);
        long total = Ipv4.total(prefix);
        draft.figure("Addresses in all", "2^(32 - prefix)", "2^(32 - " + prefix + ")", total, "1", 10);
        long usable = Ipv4.usable(prefix);
        draft.figure(
                "Addresses for hosts",
                prefix >= 31 ? "all of them" : "all - 2",
                of(total, 10) + " - " + (total - usable),
                usable,
                "1",
                10);
    }

    /** Why no host may have this address, or nothing. */
    private static String objection(Ipv4 ip, int prefix) {
        String special = special(ip);
        if (!special.isEmpty()) {
            return special;
        }
        if (prefix < 31 && ip.equals(ip.network(prefix))) {
            return ip + " is the network's own address.";
        }
        return prefix < 31 && ip.equals(ip.last(prefix)) ? ip + " is the network's broadcast address." : "";
    }

    private static String special(Ipv4 ip) {
        if (ip.within("0.0.0.0", 8)) {
            return ip + " lies in 0.0.0.0/8, which stands for this network.";
        }
        if (ip.within("127.0.0.0", 8)) {
            return ip + " lies in 127.0.0.0/8, which never leaves the machine.";
        }
        if (ip.within("224.0.0.0", 4)) {
            return ip + " lies in 224.0.0.0/4, which is for groups.";
        }
        return ip.within("240.0.0.0", 4) ? ip + " lies in 240.0.0.0/4, which is reserved." : "";
    }

    private static Result alone(ResultDraft draft, Ipv4 ip, int prefix) {
        if (ip.within("169.254.0.0", 16)) {
            return draft.judged(
                    Level.CAREFUL,
                    "self-assigned",
                    ip + " lies in 169.254.0.0/16: the host got no address from a server.");
        }
        return draft.judged(
                Level.GOOD,
                "usable",
                ip + " is one of " + Ipv4.usable(prefix) + " host addresses of " + ip.network(prefix) + "/" + prefix
                        + ".");
    }

    private static Result together(ResultDraft draft, Input in, Ipv4 ip, int prefix) {
        Ipv4 other = Ipv4.parse("other", in.other());
        Ipv4 mask = new Ipv4(Ipv4.mask(prefix));
        draft.say(
                "Network of the other host",
                "address AND mask",
                other + " AND " + mask + " = " + other.network(prefix));
        if (ip.equals(other)) {
            return draft.judged(
                    Level.BAD, "the same address", "Both hosts have " + ip + ": they will disturb each other.");
        }
        String wrong = objection(other, prefix);
        if (!wrong.isEmpty()) {
            return draft.judged(Level.BAD, "not usable for a host", wrong);
        }
        boolean shared = ip.network(prefix).equals(other.network(prefix));
        String networks = ip + " is in " + ip.network(prefix) + "/" + prefix + ", " + other + " in "
                + other.network(prefix) + "/" + prefix;
        return shared
                ? draft.judged(Level.GOOD, "same network", networks + ".")
                : draft.judged(Level.CAREFUL, "different networks", networks + ": they need a router between them.");
    }
}
