package org.benchtrail.ticket;

import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** Text from outside that goes to the database without becoming part of a fact. */
public final class Typed {
    public static final String WHAT_TO_DO = "Remove the control characters: only text can be kept.";

    private Typed() {}

    /** Whether a database column can hold it: no control characters, no lone surrogate. */
    public static boolean isStorable(@Nullable String text) {
        return text == null
                || (text.chars().noneMatch(Character::isISOControl)
                        && StandardCharsets.UTF_8.newEncoder().canEncode(text));
    }
}
