package org.benchtrail.core.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Checks the parts of one fact and tells every problem at once. Lengths are in UTF-16 code units; a text of at most {@link
 * #LINE} is one line, whose line breaks and tabs become spaces.
 */
public final class FieldChecks {
    public static final int LINE = 300;
    public static final int PARAGRAPH = 4_000;

    private final List<Problem> problems = new ArrayList<>();

    /** Trimmed, line ends as one {@code \n}, neither empty nor longer than {@code most}. */
    public String required(String field, @Nullable String text, int most, String whatToDo) {
        String clean = optional(field, text, most);
        require(!clean.isEmpty(), field, whatToDo);
        return clean;
    }

    /** As {@link #required}, but may be empty. */
    public String optional(String field, @Nullable String text, int most) {
        String ended = text == null ? "" : text.strip().replace("\r\n", "\n").replace('\r', '\n');
        String clean = most <= LINE ? folded(ended) : ended;
        require(
                clean.length() <= most,
                field,
                String.format(
                        Locale.ROOT,
                        "Shorten this to %,d characters (it has %,d); attach a longer text as a file.",
                        most,
                        clean.length()));
        require(
                clean.chars().noneMatch(c -> c < ' ' && c != '\n' && c != '\t') && wellFormed(clean),
                field,
                "Remove the control characters: only text can be kept.");
        return clean;
    }

    /** As {@link #optional}, with null for an empty text. */
    public @Nullable String orNull(String field, @Nullable String text, int most) {
        String clean = optional(field, text, most);
        return clean.isEmpty() ? null : clean;
    }

    /** One line: what a form or a program broke into several is joined by single spaces. */
    private static String folded(String text) {
        return text.replace('\u0085', '\n')
                .replace('\u2028', '\n')
                .replace('\u2029', '\n')
                .replace('\t', ' ')
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .collect(Collectors.joining(" "));
    }

    public void require(boolean holds, String field, String whatToDo) {
        if (!holds) {
            problems.add(new Problem(field, whatToDo));
        }
    }

    public void done() {
        if (!problems.isEmpty()) {
            throw new Invalid(problems);
        }
    }

    /** A lone surrogate has no UTF-8 form, and so could not be hashed. */
    private static boolean wellFormed(String text) {
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
