package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;

/** An instrument's accuracy as people type it. */
final class AccuracyText {
    private static final String NUMBER = "(\\d+(?:[.,]\\d+)?)";
    private static final String DIGITS = "(?:counts?|digits?|dgts?|lsd)";
    private static final Pattern OF_READING =
            Pattern.compile("\u00b1?\\(?" + NUMBER + "%(?:of)?(?:reading|rdg)?(?:\\+" + NUMBER + DIGITS + "?)?\\)?");
    private static final Pattern COUNTS = Pattern.compile("\u00b1?" + NUMBER + DIGITS);
    private static final Pattern CERTIFIED = Pattern.compile("u=?(.+?)[,;]?k=?" + NUMBER);

    private AccuracyText() {}

    static Accuracy read(String field, String text, Quantity reading) {
        String tidy =
                text.strip().replace("+-", "\u00b1").replace("+/-", "\u00b1").replace('\u00a0', ' ');
        if (tidy.isEmpty()) {
            return new Accuracy.Unknown();
        }
        try {
            Accuracy accuracy = read(tidy, reading);
            accuracy.standardUncertainty(reading);
            return accuracy;
        } catch (Invalid e) {
            throw new Invalid(
                    field,
                    "Write the accuracy as '0.5 % + 2' (of reading, plus counts), '\u00b10.1 "
                            + reading.unit().symbol() + "', or 'U 0.2 k 2' from a certificate. "
                            + e.problems().get(0).sentence());
        }
    }

    private static Accuracy read(String tidy, Quantity reading) {
        String dense = tidy.replace(" ", "").toLowerCase(Locale.ROOT);
        boolean share = reading.unit().equals(Units.PERCENT) && dense.startsWith("\u00b1") && !dense.contains("+");
        Matcher ofReading = OF_READING.matcher(dense);
        if (ofReading.matches() && !share) {
            double counts = ofReading.group(2) == null ? 0 : number(ofReading.group(2));
            return new Accuracy.PercentPlusCounts(number(ofReading.group(1)), counts, reading.lastDigit());
        }
        Matcher counts = COUNTS.matcher(dense);
        if (counts.matches() && !reading.unit().equals(Units.COUNTED)) {
            return new Accuracy.PercentPlusCounts(0, number(counts.group(1)), reading.lastDigit());
        }
        Matcher certified =
                CERTIFIED.matcher(tidy.replace(" ", "").replaceFirst("^U", "u").replace("K=", "k="));
        if (certified.matches()) {
            return new Accuracy.Certified(difference(certified.group(1), reading), number(certified.group(2)));
        }
        return new Accuracy.Absolute(difference(tidy.replace("\u00b1", ""), reading));
    }

    private static Quantity difference(String text, Quantity reading) {
        return Quantity.parse("accuracy", text, reading.unit());
    }

    private static double number(String digits) {
        return new BigDecimal(digits.replace(',', '.')).doubleValue();
    }
}
