package org.benchtrail.platform;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** An address within this server, safe to send a browser to. */
public final class LocalPath {
    /** One slash, then neither a second one nor a backslash (browsers read both as another host), and nothing unprintable. */
    private static final Pattern LOCAL = Pattern.compile("/(?![/\\\\])[\\x21-\\x7e&&[^\\\\]]{0,1999}");

    private LocalPath() {}

    /** Returns {@code asked} if it is a local path, otherwise {@code otherwise}. */
    public static String orElse(@Nullable String asked, String otherwise) {
        return asked != null && LOCAL.matcher(asked).matches() ? asked : otherwise;
    }
}
