package org.benchtrail.platform;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Lines of comma-separated values as RFC 4180 has them. */
public enum Csv {
    /** What is there, and nothing else. */
    PLAIN,
    /**
     * A cell that a spreadsheet would take for a formula is told to be text by an apostrophe before it: what somebody typed into a
     * ticket must not run on the desk of whoever opens the file. A number is no formula, whatever its sign.
     */
    FOR_SPREADSHEET;

    public static final String MEDIA_TYPE = "text/csv;charset=UTF-8;header=present";

    private static final Pattern NUMBER = Pattern.compile("[+-][0-9]{1,40}(?:\\.[0-9]{1,40})?(?:[eE][+-]?[0-9]{1,3})?");

    /** @param reader for which the file is, as an address names it; whatever it says else, the file is plain */
    public static Csv of(String reader) {
        return reader.equals("spreadsheet") ? FOR_SPREADSHEET : PLAIN;
    }

    /** What tells the browser to keep the file, under a name that says which of the two it is. */
    public String disposition(String name) {
        return "attachment; filename=\"" + name + (this == PLAIN ? "" : "-for-a-spreadsheet") + ".csv\"";
    }

    /** One record with its line end. */
    public String line(List<String> cells) {
        return cells.stream().map(this::cell).collect(Collectors.joining(",", "", "\r\n"));
    }

    private String cell(String text) {
        String told = this == FOR_SPREADSHEET && isFormula(text) ? "'" + text : text;
        boolean bare = told.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return bare ? told : '"' + told.replace("\"", "\"\"") + '"';
    }

    private static boolean isFormula(String text) {
        return !text.isEmpty()
                && "=+-@\t\r\n".indexOf(text.charAt(0)) >= 0
                && !NUMBER.matcher(text).matches();
    }
}
