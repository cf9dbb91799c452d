package org.benchtrail.core.bench.network;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.network.Subnet.Input;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SubnetTest {
    private static final String RFC = "RFC 4632 and RFC 3021, table 5.6";

    private static Result of(String address, String mask, String other) {
        return Subnet.calculate(new Input(address, mask, other));
    }

    private static String row(Result result, String name) {
        return FigureOf.rule(result, name).sentence();
    }

    @ParameterizedTest
    @CsvSource({
        "192.168.10.77/26, 192.168.10.64/26, 192.168.10.127, 255.255.255.192, 64, 62, 192.168.10.65 to 192.168.10.126",
        "10.1.2.3/20, 10.1.0.0/20, 10.1.15.255, 255.255.240.0, 4096, 4094, 10.1.0.1 to 10.1.15.254",
        "203.0.113.9/30, 203.0.113.8/30, 203.0.113.11, 255.255.255.252, 4, 2, 203.0.113.9 to 203.0.113.10",
        "192.0.2.0/31, 192.0.2.0/31, none, 255.255.255.254, 2, 2, 192.0.2.0 to 192.0.2.1",
        "172.16.5.1/32, 172.16.5.1/32, none, 255.255.255.255, 1, 1, 172.16.5.1"
    })
    void table(
            String address, String network, String broadcast, String mask, double total, double usable, String hosts) {
        Result result = of(address, "", "");
        check(RFC, network, row(result, "network"));
        check(RFC, broadcast, row(result, "broadcast"));
        check(RFC, mask, row(result, "mask"));
        check(RFC, hosts, row(result, "hosts"));
        check(RFC, total, FigureOf.value(result, "Addresses in all"), 0);
        check(RFC, usable, FigureOf.value(result, "Addresses for hosts"), 0);
        assertEquals("usable", result.judgement().words());
    }

    @ParameterizedTest
    @CsvSource({
        "1, 128.0.0.0, 2147483648",
        "2, 192.0.0.0, 1073741824",
        "3, 224.0.0.0, 536870912",
        "4, 240.0.0.0, 268435456",
        "5, 248.0.0.0, 134217728",
        "6, 252.0.0.0, 67108864",
        "7, 254.0.0.0, 33554432",
        "8, 255.0.0.0, 16777216",
        "9, 255.128.0.0, 8388608",
        "10, 255.192.0.0, 4194304",
        "11, 255.224.0.0, 2097152",
        "12, 255.240.0.0, 1048576",
        "13, 255.248.0.0, 524288",
        "14, 255.252.0.0, 262144",
        "15, 255.254.0.0, 131072",
        "16, 255.255.0.0, 65536",
        "17, 255.255.128.0, 32768",
        "18, 255.255.192.0, 16384",
        "19, 255.255.224.0, 8192",
        "20, 255.255.240.0, 4096",
        "21, 255.255.248.0, 2048",
        "22, 255.255.252.0, 1024",
        "23, 255.255.254.0, 512",
        "24, 255.255.255.0, 256",
        "25, 255.255.255.128, 128",
        "26, 255.255.255.192, 64",
        "27, 255.255.255.224, 32",
        "28, 255.255.255.240, 16",
        "29, 255.255.255.248, 8",
        "30, 255.255.255.252, 4",
        "31, 255.255.255.254, 2",
        "32, 255.255.255.255, 1"
    })
    void masks_areThoseOfTheTable_all(int prefix, String mask, double addresses) {
        String source = "RFC 1878, variable length subnet table (from memory)";
        Result result = of("0.0.0.0/" + prefix, "", "");
        check(source, mask, row(result, "mask"));
        check(source, addresses, FigureOf.value(result, "Addresses in all"), 0);
        check(source, result, of("0.0.0.0", mask, ""));
    }

    @Test
    void theWholeSpace_isCountedWithoutOverflow() {
        check(RFC, 4_294_967_296.0, FigureOf.value(of("8.8.4.4/0", "", ""), "Addresses in all"), 0);
    }

    @Test
    void maskAndPrefix_sayTheSame() {
        assertEquals(of("192.168.10.77/26", "", ""), of("192.168.10.77", "255.255.255.192", ""));
        assertEquals(of("192.168.10.77", "26", ""), of("192.168.10.77", "/26", ""));
    }

    @ParameterizedTest
    @CsvSource({
        "256.1.1.1, 24, address", "010.1.1.1, 24, address", "10.1.1, 24, address", "10.1.1.1.1, 24, address",
                "10.1.1.x, 24, address",
        "10.1.1.-1, 24, address", "10.1.1., 24, address", "10.1.1.1, 33, mask", "10.1.1.1, -1, mask",
                "10.1.1.1, 255.0.255.0, mask",
        "10.1.1.1, 255.255.255.256, mask", "10.1.1.1, '', mask", "10.1.1.1/24, 24, mask", "10.1.1.1/33, '', address",
                "'', 24, address",
        "10.1.1.1, 024, mask"
    })
    void malformed_isRefusedByField(String address, String mask, String field) {
        Invalid refusal = assertThrows(Invalid.class, () -> new Input(address, mask, ""));
        assertTrue(refusal.problems().stream().anyMatch(p -> p.field().equals(field)), refusal.getMessage());
    }

    @Test
    void allThreeWrong_areToldAtOnce() {
        assertEquals(
                3,
                assertThrows(Invalid.class, () -> new Input("1.2.3", "40", "1.2.3.400"))
                        .problems()
                        .size());
    }

    @ParameterizedTest
    @CsvSource({
        "192.168.10.64/26, not usable for a host", "192.168.10.127/26, not usable for a host",
                "127.0.0.1/8, not usable for a host",
        "224.0.0.5/24, not usable for a host", "0.1.2.3/8, not usable for a host",
                "255.255.255.255/32, not usable for a host",
        "169.254.7.7/16, self-assigned", "192.168.10.65/26, usable"
    })
    void usableOrNot(String address, String words) {
        assertEquals(words, of(address, "", "").judgement().words());
    }

    @ParameterizedTest
    @CsvSource({
        "192.168.10.126, same network",
        "192.168.10.130, different networks",
        "192.168.10.77, the same address",
        "192.168.10.127, not usable for a host",
        "127.0.0.1, not usable for a host"
    })
    void otherHost(String other, String words) {
        assertEquals(words, of("192.168.10.77/26", "", other).judgement().words());
    }

    @Test
    void exampleNamesBothNetworks() {
        Result result = Subnet.calculate(Subnet.CALCULATION.example());
        assertEquals(Level.CAREFUL, result.judgement().level());
        assertTrue(result.judgement().reason().contains("192.168.10.64/26")
                && result.judgement().reason().contains("192.168.10.128/26"));
    }

    /** Against the JDK's own address parsing and big integers, in both families. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void networkAndLast_agreeWithBigIntegers(long seed) throws UnknownHostException {
        Random random = new Random(seed);
        for (int i = 0; i < 1000; i++) {
            int bits = i % 2 == 0 ? 32 : 128;
            Ip ip = new Ip(new BigInteger(bits, random).and(new BigInteger(bits, random)), bits);
            int prefix = random.nextInt(bits + 1);
            String said = "seed " + seed + " " + ip + "/" + prefix;
            if (!ip.within("::ffff:0.0.0.0/96")) {
                assertEquals(
                        new BigInteger(1, InetAddress.getByName(ip.toString()).getAddress()), ip.value(), said);
            }
            assertEquals(ip, Ip.parse("address", ip.toString()));
            BigInteger low = ip.value().shiftRight(bits - prefix).shiftLeft(bits - prefix);
            BigInteger high = low.add(BigInteger.TWO.pow(bits - prefix)).subtract(BigInteger.ONE);
            assertEquals(low, ip.network(prefix).value(), said);
            assertEquals(high, ip.last(prefix).value(), said);
            assertEquals(
                    prefix,
                    Ip.prefix("mask", bits == 32 ? ip.mask(prefix).toString() : String.valueOf(prefix), bits),
                    said);
        }
    }

    /** Examples of the recommendation, sections 1, 2 and 4. */
    @ParameterizedTest
    @CsvSource({
        "2001:db8:0:0:1:0:0:1, 2001:db8::1:0:0:1",
        "2001:0db8:0:0:1:0:0:1, 2001:db8::1:0:0:1",
        "2001:db8::1:0:0:1, 2001:db8::1:0:0:1",
        "2001:db8::0:1:0:0:1, 2001:db8::1:0:0:1",
        "2001:0db8::1:0:0:1, 2001:db8::1:0:0:1",
        "2001:db8:0:0:1::1, 2001:db8::1:0:0:1",
        "2001:db8:0000:0:1::1, 2001:db8::1:0:0:1",
        "2001:DB8:0:0:1::1, 2001:db8::1:0:0:1",
        "2001:db8:aaaa:bbbb:cccc:dddd:eeee:0001, 2001:db8:aaaa:bbbb:cccc:dddd:eeee:1",
        "2001:db8:aaaa:bbbb:cccc:dddd::1, 2001:db8:aaaa:bbbb:cccc:dddd:0:1",
        "2001:db8:0:0:0::1, 2001:db8::1",
        "2001:db8:0:0::1, 2001:db8::1",
        "2001:db8:0::1, 2001:db8::1",
        "2001:db8::aaaa:0:0:1, 2001:db8::aaaa:0:0:1",
        "2001:db8:0:0:aaaa::1, 2001:db8::aaaa:0:0:1",
        "2001:db8:0:0:0:0:2:1, 2001:db8::2:1",
        "2001:db8::0:1, 2001:db8::1",
        "2001:db8:0:1:1:1:1:1, 2001:db8:0:1:1:1:1:1",
        "2001:db8::1:1:1:1:1, 2001:db8:0:1:1:1:1:1",
        "2001:0:0:1:0:0:0:1, 2001:0:0:1::1",
        "2001:db8:aaaa:bbbb:cccc:dddd:eeee:AAAA, 2001:db8:aaaa:bbbb:cccc:dddd:eeee:aaaa",
        "0:0:0:0:0:ffff:192.0.2.1, ::ffff:192.0.2.1"
    })
    void v6_isWrittenAsRecommended(String typed, String written) {
        check("RFC 5952, sections 1 to 5", written, Ip.parse("address", typed).toString());
    }

    @ParameterizedTest
    @CsvSource({
        "2001:DB8:0:0:8:800:200C:417A, 2001:DB8::8:800:200C:417A",
        "FF01:0:0:0:0:0:0:101, FF01::101",
        "0:0:0:0:0:0:0:1, ::1",
        "0:0:0:0:0:0:0:0, ::",
        "0:0:0:0:0:0:13.1.68.3, ::13.1.68.3",
        "0:0:0:0:0:FFFF:129.144.52.38, ::FFFF:129.144.52.38"
    })
    void v6_longAndShortFormAreOneAddress(String lengthy, String shortened) {
        check("RFC 4291, section 2.2", Ip.parse("address", lengthy), Ip.parse("address", shortened));
    }

    @ParameterizedTest
    @CsvSource({
        "2001:0DB8:0000:CD30:0000:0000:0000:0000/60",
        "2001:0DB8::CD30:0:0:0:0/60",
        "2001:0DB8:0:CD30::/60",
        "2001:0DB8:0:CD30:123:4567:89AB:CDEF/60"
    })
    void v6_prefixOfSixtyBits(String typed) {
        check("RFC 4291, section 2.3", "2001:db8:0:cd30::/60", row(of(typed, "", ""), "network"));
    }

    @ParameterizedTest
    @CsvSource({
        "1:2:3:4:5:6:7, address",
        "1:2:3:4:5:6:7:8:9, address",
        "1::2::3, address",
        ":::, address",
        "1:2:3:4:5:6:7::8:9, address",
        "12345::, address",
        "g::1, address",
        "1:, address",
        "::1.2.3, address",
        "::1.2.3.4:5, address",
        "fe80::1%eth0, address",
        "2001:db8::1/129, address"
    })
    void v6_malformedIsRefusedByField(String address, String field) {
        FigureOf.names(
                assertThrows(Invalid.class, () -> new Input(address, address.contains("/") ? "" : "64", "")), field);
    }

    @ParameterizedTest
    @CsvSource({
        "2001:db8::17/64, GOOD, usable, 18446744073709551615",
        "2001:db8::/64, BAD, not usable for a host, 18446744073709551615",
        "2001:db8::ffff:ffff:ffff:ffff/64, GOOD, usable, 18446744073709551615",
        "2001:db8::/127, GOOD, usable, 2",
        "2001:db8::1/127, GOOD, usable, 2",
        "2001:db8::2/126, GOOD, usable, 3",
        "2001:db8::/126, BAD, not usable for a host, 3",
        "2001:db8::/128, GOOD, usable, 1",
        "2001:db8::1/0, CAREFUL, takes every host for a neighbour, 3.402823669e38",
        "8.8.4.4/0, CAREFUL, takes every host for a neighbour, 4294967294",
        "::/128, BAD, not usable for a host, 1",
        "::1/128, BAD, not usable for a host, 1",
        "::2/128, GOOD, usable, 1",
        "::ffff:192.0.2.1/96, BAD, not usable for a host, 4294967295",
        "feff::1/64, CAREFUL, no longer in use, 18446744073709551615",
        "ff00::1/64, BAD, not usable for a host, 18446744073709551615",
        "fe7f::1/64, GOOD, usable, 18446744073709551615",
        "fe80::1/64, CAREFUL, reaches its own link only, 18446744073709551615",
        "febf::1/64, CAREFUL, reaches its own link only, 18446744073709551615",
        "fec0::1/64, CAREFUL, no longer in use, 18446744073709551615",
        "fbff::1/64, GOOD, usable, 18446744073709551615",
        "fc00::1/64, CAREFUL, from a block without a use, 18446744073709551615",
        "fd00::1/64, GOOD, usable, 18446744073709551615"
    })
    void v6_mayAHostHaveIt(String address, Level level, String words, double hosts) {
        Result result = of(address, "", "");
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        assertEquals(words, result.judgement().words());
        assertEquals(hosts, FigureOf.value(result, "Addresses for hosts"), 1e-9 * hosts);
        if (address.contains(":")) {
            assertEquals("none", row(result, "broadcast"));
        }
    }

    /** The first and last address of each block, and those just before and after it: what is said of a host there. */
    @ParameterizedTest
    @CsvSource({
        "0.0.0.0, 0.255.255.255, RFC 6890, not usable for a host",
        "10.0.0.0, 10.255.255.255, RFC 1918, ''",
        "100.64.0.0, 100.127.255.255, RFC 6598, ''",
        "127.0.0.0, 127.255.255.255, RFC 6890, not usable for a host",
        "169.254.0.0, 169.254.255.255, RFC 6890, self-assigned",
        "172.16.0.0, 172.31.255.255, RFC 1918, ''",
        "192.0.0.0, 192.0.0.255, RFC 6890, ''",
        "192.0.2.0, 192.0.2.255, RFC 5737, ''",
        "192.88.99.0, 192.88.99.255, RFC 7526, ''",
        "192.168.0.0, 192.168.255.255, RFC 1918, ''",
        "198.18.0.0, 198.19.255.255, RFC 2544, ''",
        "198.51.100.0, 198.51.100.255, RFC 5737, ''",
        "203.0.113.0, 203.0.113.255, RFC 5737, ''",
        "224.0.0.0, 239.255.255.255, RFC 6890, not usable for a host",
        "240.0.0.0, 255.255.255.255, RFC 6890, not usable for a host",
        "::, ::, RFC 4291, not usable for a host",
        "::1, ::1, RFC 4291, not usable for a host",
        "::ffff:0:0, ::ffff:ffff:ffff, RFC 4291, not usable for a host",
        "64:ff9b::, 64:ff9b::ffff:ffff, RFC 6052, ''",
        "100::, 100::ffff:ffff:ffff:ffff, RFC 6666, ''",
        "2001::, 2001:0:ffff:ffff:ffff:ffff:ffff:ffff, RFC 4380, ''",
        "2001:2::, 2001:2:0:ffff:ffff:ffff:ffff:ffff, RFC 5180, ''",
        "2001:db8::, 2001:db8:ffff:ffff:ffff:ffff:ffff:ffff, RFC 3849, ''",
        "2002::, 2002:ffff:ffff:ffff:ffff:ffff:ffff:ffff, RFC 3056, ''",
        "3fff::, 3fff:fff:ffff:ffff:ffff:ffff:ffff:ffff, RFC 9637, ''",
        "fc00::, fcff:ffff:ffff:ffff:ffff:ffff:ffff:ffff, RFC 4193, from a block without a use",
        "fd00::, fdff:ffff:ffff:ffff:ffff:ffff:ffff:ffff, RFC 4193, ''",
        "fe80::, febf:ffff:ffff:ffff:ffff:ffff:ffff:ffff, RFC 4291, reaches its own link only",
        "fec0::, feff:ffff:ffff:ffff:ffff:ffff:ffff:ffff, RFC 4291, no longer in use",
        "ff00::, ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff, RFC 4291, not usable for a host"
    })
    void specialBlocks_areThoseOfTheRegistries(String first, String last, String rfc, String words) {
        Ip from = Ip.parse("address", first);
        Ip to = Ip.parse("address", last);
        String source = rfc + (words.isEmpty() || rfc.equals("RFC 4193") ? " (block from memory)" : " (special block)");
        for (Ip inside : List.of(from, to)) {
            check(
                    source,
                    words,
                    SpecialAddress.of(inside).map(SpecialAddress::words).orElse(""));
            boolean said = SpecialAddress.of(inside)
                    .map(block -> block.source().title())
                    .or(() -> SpecialAddress.note(inside))
                    .orElse("nothing")
                    .contains(rfc);
            check(source, true, said);
        }
        Stream<Ip> before = first.equals("0.0.0.0") || first.equals("::") ? Stream.empty() : Stream.of(from.plus(-1));
        Stream<Ip> after = last.startsWith("255.") || last.startsWith("ffff:") ? Stream.empty() : Stream.of(to.plus(1));
        for (Ip outside : Stream.concat(before, after).toList()) {
            boolean same = SpecialAddress.note(outside).equals(SpecialAddress.note(from))
                    && SpecialAddress.of(outside).equals(SpecialAddress.of(from));
            check(source, false, same);
        }
    }

    @Test
    void v6_ofTheSitesOwnIsSaidToStayThere() {
        assertTrue(of("fd12:3456::1/64", "", "").assumptions().toString().contains("RFC 4193"));
        assertTrue(of("2001:db8::1/56", "", "").assumptions().toString().contains("prefix of 64"));
        assertTrue(!of("2001:db8::1/64", "", "").assumptions().toString().contains("prefix of 64"));
    }

    @ParameterizedTest
    @CsvSource({
        "192.168.10.77/24, 192.168.10.130/24, GOOD, same network",
        "192.168.10.77/24, 192.168.10.130/25, BAD, 'one takes the other for a neighbour, not the other way round'",
        "192.168.10.77/25, 192.168.10.130/24, BAD, 'one takes the other for a neighbour, not the other way round'",
        "192.168.10.77/24, 192.168.10.99/25, CAREFUL, neighbours with different masks",
        "192.168.10.77/25, 192.168.10.130/25, CAREFUL, different networks",
        "192.168.10.77/25, 192.168.10.128/25, BAD, not usable for a host",
        "192.168.10.77/25, 192.168.10.128/24, BAD, 'one takes the other for a neighbour, not the other way round'",
        "2001:db8::1/64, 2001:db8::2, GOOD, same network",
        "2001:db8::1/64, 2001:db8:0:1::2, CAREFUL, different networks",
        "2001:db8::1/63, 2001:db8:0:1::2, GOOD, same network",
        "2001:db8::1/63, 2001:db8:0:1::2/64, BAD, 'one takes the other for a neighbour, not the other way round'",
        "2001:db8::1/64, 2001:DB8:0::1, BAD, the same address",
        "192.0.2.0/31, 192.0.2.1, GOOD, same network",
        "192.0.2.0/32, 192.0.2.1, CAREFUL, different networks"
    })
    void twoHosts_eachWithItsOwnMask(String address, String other, Level level, String words) {
        Result result = of(address, "", other);
        assertEquals(words, result.judgement().words(), result.judgement().reason());
        assertEquals(level, result.judgement().level());
    }

    @Test
    void otherMask_standsWithTheAddressOrByItself() {
        assertEquals(
                of("192.168.10.77/24", "", "192.168.10.130/25"),
                Subnet.calculate(new Input("192.168.10.77", "24", "192.168.10.130", "255.255.255.128")));
        FigureOf.names(assertThrows(Invalid.class, () -> new Input("10.0.0.1/8", "", "10.0.0.2/8", "8")), "otherMask");
        FigureOf.names(assertThrows(Invalid.class, () -> new Input("10.0.0.1/8", "", "", "8")), "other");
        FigureOf.names(assertThrows(Invalid.class, () -> new Input("10.0.0.1/8", "", "2001:db8::1")), "other");
    }
}
