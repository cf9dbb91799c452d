package org.benchtrail.platform;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** The version that a program builds on, as the header says it. */
public final class IfMatch {
    /** A version, and perhaps what the tag of an answer adds to it. */
    private static final Pattern TAG = Pattern.compile("\"?(\\d{1,9})(?:-[\\w-]{1,40})?\"?");

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
        Matcher tag = TAG.matcher(header.strip());
        if (!tag.matches()) {
            throw new Invalid(
                    "If-Match", "Name the version of the " + what + " that this builds on: its ETag, such as \"27\".");
        }
        return Integer.parseInt(tag.group(1));
    }
}
