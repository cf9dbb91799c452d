package org.benchtrail.platform;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Lines of comma-separated values as RFC 4180 has them.
 *
 * <p>A cell that a spreadsheet would take for a formula is told to be text by an apostrophe before it: what somebody typed into a
 * ticket must not run on the desk of whoever opens the file. A number is no formula, whatever its sign.
 */
public final class Csv {
    public static final String MEDIA_TYPE = "text/csv;charset=UTF-8;header=present";

    private static final Pattern NUMBER = Pattern.compile("[+-][0-9]{1,40}(?:\\.[0-9]{1,40})?(?:[eE][+-]?[0-9]{1,3})?");

    private Csv() {}

    /** One record with its line end. */
    public static String line(List<String> cells) {
        return cells.stream().map(Csv::cell).collect(Collectors.joining(",", "", "\r\n"));
    }

    private static String cell(String text) {
        boolean formula = !text.isEmpty() && "=+-@\t\r\n".indexOf(text.charAt(0)) >= 0;
        String safe = formula && !NUMBER.matcher(text).matches() ? "'" + text : text;
        boolean plain = safe.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return plain ? safe : '"' + safe.replace("\"", "\"\"") + '"';
    }
}
