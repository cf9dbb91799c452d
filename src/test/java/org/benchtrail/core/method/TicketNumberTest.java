package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The check digit catches what is misheard and most of what is swapped. */
class TicketNumberTest {
    private static final long SEED = 11_10;

    @Test
    void checkDigit_isTheOneOfTheStandard() {
        Published.check("ISO/IEC 7064 MOD 11,10: worked example 0794 takes 5", 5, TicketNumber.checkDigit("0794"));
    }

    @Test
    void checkDigit_ofTheExampleInTheDocumentation() {
        assertEquals(6, TicketNumber.checkDigit("40718"), "worked by hand: P = 10,8,5,2,6,6 and (11 - 5) mod 10 = 6");
        assertEquals("40718-6", new TicketNumber(40718).toString());
    }

    /** The recursion of the standard read backwards: with its check digit, a number ends on 1 (mod 10). */
    private static boolean holds(String digits) {
        int product = 10;
        for (int i = 0; i < digits.length() - 1; i++) {
            int sum = (product + (digits.charAt(i) - '0')) % 10;
            product = (sum == 0 ? 10 : sum) * 2 % 11;
        }
        return (product + digits.charAt(digits.length() - 1) - '0') % 10 == 1;
    }

    @Test
    void everySingleWrongDigit_isCaught_andMostSwaps() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(SEED);
        int swaps = 0;
        int caught = 0;
        for (int n = 0; n < 500; n++) {
            String written = new TicketNumber(random.nextInt(1, 1_000_000_000))
                    .toString()
                    .replace("-", "");
            assertTrue(holds(written), written);
            for (int at = 0; at < written.length(); at++) {
                for (char digit = '0'; digit <= '9'; digit++) {
                    String wrong = written.substring(0, at) + digit + written.substring(at + 1);
                    if (digit != written.charAt(at)) {
                        assertThrows(Invalid.class, () -> TicketNumber.parse(wrong), () -> written + " as " + wrong);
                    }
                }
                if (at > 0 && written.charAt(at) != written.charAt(at - 1)) {
                    swaps++;
                    caught += refuses(swapped(written, at)) ? 1 : 0;
                }
            }
        }
        // a pure MOD 11,10 system is known to let some swaps of neighbours through; from the count, about one in fifty
        assertTrue(caught >= 0.97 * swaps, caught + " of " + swaps + " swaps caught");
        assertNotEquals(
                swaps, caught, "MOD 11,10 does not catch every swap; if it does, this test looks at something else");
        System.out.println(
                "TicketNumber, seed " + SEED + ": " + caught + " of " + swaps + " swaps of neighbours caught");
    }

    private static String swapped(String digits, int at) {
        return digits.substring(0, at - 1) + digits.charAt(at) + digits.charAt(at - 1) + digits.substring(at + 1);
    }

    private static boolean refuses(String written) {
        try {
            TicketNumber.parse(written);
            return false;
        } catch (Invalid refused) {
            return true;
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"40718-6", "407186", "  40718-6\n"})
    void written_withOrWithoutHyphen_isRead(String written) {
        assertEquals(new TicketNumber(40718), TicketNumber.parse(written));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "-",
                "6",
                "-6",
                "40718-",
                "40718--6",
                "4-07186",
                "40718 6",
                "040718-6",
                "40718-5",
                "4071x-6",
                "12345678901",
                "\u0664\u0660\u0667\u0661\u0668-6",
                "+40718-6"
            })
    void anythingElse_isRefusedWithASentence(String written) {
        Invalid refused = assertThrows(Invalid.class, () -> TicketNumber.parse(written));
        assertEquals("ticket", refused.problems().get(0).field());
        assertTrue(refused.problems().get(0).sentence().endsWith("."));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 9, 10, 999_999_999})
    void everySerial_isReadBack(int serial) {
        TicketNumber number = new TicketNumber(serial);
        assertEquals(number, TicketNumber.parse(number.toString()));
    }

    @ParameterizedTest
    @ValueSource(ints = {Integer.MIN_VALUE, -1, 0, 1_000_000_000})
    void serialOutOfRange_isRefused(int serial) {
        assertThrows(IllegalArgumentException.class, () -> new TicketNumber(serial));
    }

    @Test
    void whatIsTyped_mayMeanANumberWithItsCheckDigitOrWithout() {
        assertEquals(List.of(new TicketNumber(40718)), TicketNumber.meant(" 40718-6 "));
        assertEquals(List.of(new TicketNumber(40718), new TicketNumber(407186)), TicketNumber.meant("407186"));
        assertEquals(List.of(new TicketNumber(40718)), TicketNumber.meant("40718"));
        assertEquals(List.of(), TicketNumber.meant("40718-5"), "the check digit does not fit");
        assertEquals(List.of(), TicketNumber.meant("bay 3"));
        assertEquals(List.of(), TicketNumber.meant("0123"));
        assertEquals(List.of(), TicketNumber.meant(""));
    }

    /** At most nine digits are a number without its check digit; one digit is never a check digit alone. */
    @Test
    void whatIsTyped_atItsBounds() {
        assertEquals(List.of(new TicketNumber(999_999_999)), TicketNumber.meant("999999999"));
        int last = TicketNumber.checkDigit("999999999");
        assertEquals(List.of(new TicketNumber(999_999_999)), TicketNumber.meant("999999999" + last));
        assertEquals(List.of(), TicketNumber.meant("999999999" + (last + 1) % 10));
        assertEquals(List.of(new TicketNumber(6)), TicketNumber.meant("6"));
    }

    @Test
    void slipOfTheCheckDigit_isMended_andNothingElse() {
        assertEquals(Optional.of(new TicketNumber(40718)), TicketNumber.mended("40718-5"));
        assertEquals(Optional.of(new TicketNumber(40718)), TicketNumber.mended("407185"));
        assertEquals(Optional.empty(), TicketNumber.mended("40718-6"), "nothing to mend");
        assertEquals(Optional.empty(), TicketNumber.mended("bay 3"));
        assertEquals(Optional.empty(), TicketNumber.mended("7"));
    }
}
