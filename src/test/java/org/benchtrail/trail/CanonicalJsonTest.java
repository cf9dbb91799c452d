package org.benchtrail.trail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.SplittableRandom;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The canonical form against RFC 8785. */
class CanonicalJsonTest {
    private static String canonical(String json) {
        return new String(CanonicalJson.of(json), StandardCharsets.UTF_8);
    }

    private static String number(String literal) {
        return canonical("[" + literal + "]").replaceAll("[\\[\\]]", "");
    }

    @Test
    void sampleOfTheRfc() throws NoSuchAlgorithmException {
        byte[] form = CanonicalJson.of("""
                {
                  "numbers": [333333333.33333329, 1E30, 4.50,
                              2e-3, 0.000000000000000000000000001],
                  "string": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
                  "literals": [null, true, false]
                }
                """);
        Published.check(
                "RFC 8785 section 3.2.2 and 3.2.3, sample",
                "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
                        + "\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
                new String(form, StandardCharsets.UTF_8));
        Published.check("RFC 8785 section 3.2.4, sample, length in bytes", 118, form.length);
        // printf '%s' '{"literals":...}' | sha256sum
        Published.check(
                "RFC 8785 section 3.2.4, sample, its SHA-256",
                "2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb",
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(form)));
    }

    @Test
    void keys_areOrderedByUtf16Units() {
        Published.check(
                "RFC 8785 section 3.2.3, sample of sorting",
                "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\u007f\",\"\u00f6\":\"Latin Small Letter O With Diaeresis\","
                        + "\"\u20ac\":\"Euro Sign\",\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}",
                canonical("""
                        {
                          "\\u20ac": "Euro Sign",
                          "\\r": "Carriage Return",
                          "\\ufb33": "Hebrew Letter Dalet With Dagesh",
                          "1": "One",
                          "\\ud83d\\ude00": "Emoji: Grinning Face",
                          "\\u0080": "Control\\u007f",
                          "\\u00f6": "Latin Small Letter O With Diaeresis"
                        }
                        """));
    }

    @ParameterizedTest
    @CsvSource({
        "0000000000000000,0",
        "8000000000000000,0",
        "0000000000000001,5e-324",
        "8000000000000001,-5e-324",
        "7fefffffffffffff,1.7976931348623157e+308",
        "ffefffffffffffff,-1.7976931348623157e+308",
        "4340000000000000,9007199254740992",
        "c340000000000000,-9007199254740992",
        "4430000000000000,295147905179352830000",
        "44b52d02c7e14af5,9.999999999999997e+22",
        "44b52d02c7e14af6,1e+23",
        "44b52d02c7e14af7,1.0000000000000001e+23",
        "444b1ae4d6e2ef4e,999999999999999700000",
        "444b1ae4d6e2ef4f,999999999999999900000",
        "444b1ae4d6e2ef50,1e+21",
        "3eb0c6f7a0b5ed8c,9.999999999999997e-7",
        "3eb0c6f7a0b5ed8d,0.000001",
        "41b3de4355555553,333333333.3333332",
        "41b3de4355555554,333333333.33333325",
        "41b3de4355555555,333333333.3333333",
        "41b3de4355555556,333333333.3333334",
        "41b3de4355555557,333333333.33333343",
        "becbf647612f3696,-0.0000033333333333333333",
        "43143ff3c1cb0959,1424953923781206.2"
    })
    void numbers_haveTheirOneForm(String bits, String text) {
        double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));
        Published.check("RFC 8785 appendix B", text, number(exact(value)));
        Published.check("RFC 8785 appendix B, the form itself", text, number(text));
    }

    /** The double written out in full, so that the literal can mean no other. */
    private static String exact(double value) {
        String digits = new BigDecimal(value).toString();
        return Double.doubleToRawLongBits(value) == Long.MIN_VALUE ? "-0" : digits;
    }

    @Test
    void everyDouble_survivesItsForm() {
        SplittableRandom random = new SplittableRandom(8785);
        for (int i = 0; i < 20_000; i++) {
            double value = Double.longBitsToDouble(random.nextLong());
            if (Double.isFinite(value)) {
                String form = number(exact(value));
                assertEquals(value + 0.0, Double.parseDouble(form), () -> form);
                assertEquals(form, number(form));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "[NaN]",
                "[Infinity]",
                "[-Infinity]",
                "[1e400]",
                "[-1e400]",
                "{\"a\":1,\"a\":1}",
                "{\"a\":1,\"\\u0061\":2}",
                "{\"a\":{\"b\":1,\"b\":2}}",
                "[\"\\ud83d\"]",
                "[\"\\ude00\"]",
                "[\"\\ude00\\ud83d\"]",
                "{\"\\ud83d\":1}",
                "[\"\\ud83dx\"]",
                "",
                " ",
                "null",
                "1",
                "\"text\"",
                "{",
                "{}{}",
                "[] x",
                "[1,]",
                "[,]",
                "{\"a\":}",
                "{\"a\" 1}",
                "{a:1}",
                "{'a':1}",
                "[01]",
                "[.5]",
                "[5.]",
                "[+1]",
                "[0x10]",
                "[1f]",
                "[1d]",
                "[tru]",
                "[nul]",
                "[\"\\x\"]",
                "[\"\\u12g4\"]",
                "[\"unfinished]",
                "[\"a\nb\"]",
                "[\"a\u0000b\"]",
                "[\"a\tb\"]"
            })
    void whatIsNotIJson_isRefused(String json) {
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(json));
    }

    /** Also as characters, not only as escapes: nothing may turn into a question mark unseen. */
    @Test
    void loneSurrogateAsACharacter_isRefused() {
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of("[\"a\ud83d\"]"));
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of("[\"\ude00b\"]"));
        assertEquals("[\"\ud83d\ude00\"]", canonical("[\"\ud83d\ude00\"]"));
    }

    @Test
    void everyControlCharacter_isEscapedAsTheRfcSays() {
        for (char c = 0; c < 0x20; c++) {
            String expected = switch (c) {
                case '\b' -> "\\b";
                case '\t' -> "\\t";
                case '\n' -> "\\n";
                case '\f' -> "\\f";
                case '\r' -> "\\r";
                default -> String.format("\\u%04x", (int) c);
            };
            Published.check(
                    "RFC 8785 section 3.2.2.2",
                    "[\"" + expected + "\"]",
                    canonical(String.format("[\"\\u%04X\"]", (int) c)));
        }
        assertEquals("[\"/<>\u2028\u007f\"]", canonical("[\"\\/\\u003c>\\u2028\\u007f\"]"));
    }

    @Test
    void form_isItsOwnForm() {
        String form = canonical("{\"b\":[{}, [], {\"y\":1.0,\"x\":\"\\u00e9\"}],\"a\":-0.0}");
        assertEquals("{\"a\":0,\"b\":[{},[],{\"x\":\"\u00e9\",\"y\":1}]}", form);
        assertEquals(form, canonical(form));
    }
}
