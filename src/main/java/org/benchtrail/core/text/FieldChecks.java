package org.benchtrail.core.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
        String clean = most <= LINE ? PlainText.line(text) : PlainText.paragraph(text);
        if (clean.length() > most) {
            problems.add(new Problem(field, tooLong(most, clean.length())));
        }
        require(PlainText.isText(clean), field, PlainText.WHAT_TO_DO);
        return clean;
    }

    private static String tooLong(int most, int length) {
        return String.format(
                Locale.ROOT,
                "Shorten this to %,d characters (it has %,d); attach a longer text as a file.",
                most,
                length);
    }

    /** As {@link #optional}, with null for an empty text. */
    public @Nullable String orNull(String field, @Nullable String text, int most) {
        String clean = optional(field, text, most);
        return clean.isEmpty() ? null : clean;
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
}
