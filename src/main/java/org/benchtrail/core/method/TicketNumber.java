package org.benchtrail.core.method;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.Invalid;

/**
 * The number of a ticket: a serial number and one check digit by ISO/IEC 7064 MOD 11,10, so that one misheard on the
 * telephone is caught. Written {@code 40718-6}; the hyphen may be left out when it is read.
 *
 * @param serial 1 to 999 999 999
 */
public record TicketNumber(int serial) {
    /** The highest serial number. */
    public static final int LAST = 999_999_999;

    public TicketNumber {
        if (serial < 1 || serial > LAST) {
            throw new IllegalArgumentException("serial must be in 1..999999999: " + serial);
        }
    }

    /**
     * Reads a written number.
     *
     * @throws Invalid if it is not digits with at most one hyphen before the last, or if the check digit does not fit
     */
    public static TicketNumber parse(String written) {
        String digits = written.strip().replaceFirst("-(?=\\d$)", "");
        if (!digits.matches("\\d{2,10}") || digits.startsWith("0")) {
            throw new Invalid("ticket", "A ticket number is digits with a check digit at the end, such as 40718-6.");
        }
        if (!isChecked(digits)) {
            throw new Invalid(
                    "ticket", "The check digit of " + written.strip() + " does not fit: read the number again.");
        }
        return new TicketNumber(Integer.parseInt(digits.substring(0, digits.length() - 1)));
    }

    /** The numbers that somebody may mean who types it with the check digit or without, the likeliest first; none for other words. */
    public static List<TicketNumber> meant(String typed) {
        String digits = typed.strip().replaceFirst("-(?=\\d$)", "");
        if (!digits.matches("[1-9]\\d{0,9}")) {
            return List.of();
        }
        List<TicketNumber> meant = new ArrayList<>();
        if (digits.length() > 1 && isChecked(digits)) {
            meant.add(parse(digits));
        }
        if (digits.length() < 10 && digits.equals(typed.strip())) {
            meant.add(new TicketNumber(Integer.parseInt(digits)));
        }
        return List.copyOf(meant);
    }

    /** The number with those digits and the check digit that fits them, for one that was written with a wrong one. */
    public static Optional<TicketNumber> mended(String typed) {
        String digits = typed.strip().replaceFirst("-(?=\\d$)", "");
        return digits.matches("[1-9]\\d{1,9}") && !isChecked(digits)
                ? Optional.of(new TicketNumber(Integer.parseInt(digits.substring(0, digits.length() - 1))))
                : Optional.empty();
    }

    private static boolean isChecked(String digits) {
        int last = digits.length() - 1;
        return checkDigit(digits.substring(0, last)) == digits.charAt(last) - '0';
    }

    /**
     * The check digit of a string of decimal digits.
     *
     * <p>Source: ISO/IEC 7064, hybrid system MOD 11,10.
     */
    public static int checkDigit(String digits) {
        int carried = 10;
        for (int i = 0; i < digits.length(); i++) {
            int sum = (carried + digits.charAt(i) - '0') % 10;
            carried = (sum == 0 ? 10 : sum) * 2 % 11;
        }
        return (11 - carried) % 10;
    }

    @Override
    public String toString() {
        String digits = Integer.toString(serial);
        return digits + "-" + checkDigit(digits);
    }
}
