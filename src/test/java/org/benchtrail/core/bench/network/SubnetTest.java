package org.benchtrail.core.bench.network;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Random;
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

    /** Against the JDK's own address parsing and big integers. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void networkAndLast_agreeWithBigIntegers(long seed) throws UnknownHostException {
        Random random = new Random(seed);
        for (int i = 0; i < 1000; i++) {
            long value = random.nextLong() & 0xFFFF_FFFFL;
            int prefix = random.nextInt(33);
            Ipv4 ip = new Ipv4(value);
            assertEquals(
                    new BigInteger(1, InetAddress.getByName(ip.toString()).getAddress()).longValue(),
                    value,
                    "seed " + seed);
            assertEquals(ip, Ipv4.parse("address", ip.toString()));
            BigInteger low = BigInteger.valueOf(value).shiftRight(32 - prefix).shiftLeft(32 - prefix);
            BigInteger high = low.add(BigInteger.TWO.pow(32 - prefix)).subtract(BigInteger.ONE);
            assertEquals(low.longValue(), ip.network(prefix).value(), "seed " + seed + " " + ip + "/" + prefix);
            assertEquals(high.longValue(), ip.last(prefix).value(), "seed " + seed + " " + ip + "/" + prefix);
            assertEquals(prefix, Ipv4.prefix("mask", prefix == 0 ? "0.0.0.0" : new Ipv4(Ipv4.mask(prefix)).toString()));
        }
    }
}
