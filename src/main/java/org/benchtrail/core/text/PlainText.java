package org.benchtrail.core.text;

import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The one rule for text that comes from outside, whatever door it comes by: what a ticket's fact may hold, everything may hold that
 * is made from it, so that nothing recorded in one step is refused in a later one.
 *
 * <p>Refused are the control characters U+0000 to U+001F but line feed and tab, which no column can keep or no reader would see, and
 * lone surrogates, which have no UTF-8 form and so could not be hashed. Everything else is text: also U+007F to U+009F, which old
 * entries hold (they come with text that was copied out of terminals or wrongly converted).
 */
public final class PlainText {
    /** What somebody is told whose text is refused. */
    public static final String WHAT_TO_DO = "Remove the control characters: only text can be kept.";

    private PlainText() {}

    public static boolean isText(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' && c != '\n' && c != '\t') {
                return false;
            }
        }
        return isWellFormed(text);
    }

    /** Trimmed, line ends as one {@code \n}; empty for null. */
    public static String paragraph(@Nullable String typed) {
        return typed == null ? "" : typed.strip().replace("\r\n", "\n").replace('\r', '\n');
    }

    /** One line: what a form or a program broke into several, in whatever way, is joined by single spaces; empty for null. */
    public static String line(@Nullable String typed) {
        return paragraph(typed)
                .replace('\u0085', '\n')
                .replace('\u2028', '\n')
                .replace('\u2029', '\n')
                .replace('\t', ' ')
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private static boolean isWellFormed(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (Character.isHighSurrogate(c)) {
                if (i + 1 == text.length() || !Character.isLowSurrogate(text.charAt(i + 1))) {
                    return false;
                }
                i++;
            } else if (Character.isLowSurrogate(c)) {
                return false;
            }
        }
        return true;
    }
}
