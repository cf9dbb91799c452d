package org.benchtrail.platform;

import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** The version that a program builds on, as the header says it. */
public final class IfMatch {
    private IfMatch() {}

    /**
     * @param what is changed, such as {@code device}
     * @throws Invalid if the header names none
     */
    public static int version(@Nullable String header, String what) {
        String digits = header == null ? "" : header.strip().replaceAll("^\"|\"$", "");
        if (!digits.matches("\\d{1,9}")) {
            throw new Invalid(
                    "If-Match", "Name the version of the " + what + " that this builds on: its ETag, such as \"27\".");
        }
        return Integer.parseInt(digits);
    }
}
