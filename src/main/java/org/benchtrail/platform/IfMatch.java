package org.benchtrail.platform;

import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** The version that a program builds on, as the header says it. */
public final class IfMatch {
    private IfMatch() {}

    /**
     * @param what is changed, such as {@code device}
     * @throws VersionNeeded if there is no such header
     * @throws Invalid if it names no version
     */
    public static int version(@Nullable String header, String what) {
        if (header == null) {
            throw new VersionNeeded("Send If-Match with the version of the " + what
                    + " that this builds on: its ETag, such as \"27\".");
        }
        String digits = header.strip().replaceAll("^\"|\"$", "");
        if (!digits.matches("\\d{1,9}")) {
            throw new Invalid(
                    "If-Match", "Name the version of the " + what + " that this builds on: its ETag, such as \"27\".");
        }
        return Integer.parseInt(digits);
    }
}
