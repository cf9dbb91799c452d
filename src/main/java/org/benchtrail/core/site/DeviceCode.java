package org.benchtrail.core.site;

import java.util.OptionalInt;
import org.benchtrail.core.method.TicketNumber;

/** What a label's address ends with: the number of the device and a check digit, so that a misread one leads to no other device. */
public final class DeviceCode {
    private DeviceCode() {}

    /** @param number 1 to 999,999,999 */
    public static String of(long number) {
        String digits = Long.toString(number);
        return digits + TicketNumber.checkDigit(digits);
    }

    /** The number of the device; empty if it is none, or the check digit does not fit. */
    public static OptionalInt read(String code) {
        if (!code.matches("[1-9]\\d{1,9}")) {
            return OptionalInt.empty();
        }
        String digits = code.substring(0, code.length() - 1);
        boolean fits = TicketNumber.checkDigit(digits) == code.charAt(code.length() - 1) - '0';
        return fits ? OptionalInt.of(Integer.parseInt(digits)) : OptionalInt.empty();
    }
}
