package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** Reads the text form of a {@link Series}. One use per text. */
final class SeriesText {
    private static final int LONGEST_LINE = 200;
    private static final int MOST_PROBLEMS = 20;
    private static final double LARGEST = 1e30;
    private static final Pattern DATE = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}[Tt ][0-9]{2}:[-0-9:.,+Zz]*");
    private static final Pattern OFFSET = Pattern.compile("[Zz]$|[+-][0-9:]+$");
    private static final Pattern SPACES = Pattern.compile(" +");
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?(?:[0-9]{1,40}(?:\\.[0-9]{0,40})?|\\.[0-9]{1,40})(?:[eE][+-]?[0-9]{1,3})?");

    private enum Separator {
        TAB("a tab", "\t"),
        SEMICOLON("a semicolon", ";"),
        COMMA("a comma", ","),
        SPACES("spaces", "");

        private final String words;
        private final String sign;

        Separator(String words, String sign) {
            this.words = words;
            this.sign = sign;
        }
    }

    /** How times are written. */
    private enum Clock {
        SECONDS("seconds"),
        DATED("a date with an offset"),
        LOCAL("a date without an offset");

        private final String words;

        Clock(String words) {
            this.words = words;
        }
    }

    /** Why a row cannot be taken; caught and collected, never seen outside. */
    private static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;

        private final String why;

        Unreadable(String why) {
            super(why, null, false, false);
            this.why = why;
        }
    }

    private final List<Invalid.Problem> problems = new ArrayList<>();
    private int unreadable;
    private double[] times = new double[64];
    private double[] values = new double[64];
    private int rows;
    private @Nullable Separator separator;
    private @Nullable Clock clock;
    private @Nullable Instant origin;

    Series read(String text) {
        String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
        int number = 0;
        boolean first = true;
        for (String line : (Iterable<String>) plain.lines()::iterator) {
            number++;
            if (!line.isBlank()) {
                takeLine(number, line, first);
                first = false;
            }
        }
        throwIfUnreadable();
        if (rows == 0) {
            throw new Invalid("rows", "No rows were found: paste lines with a time and a value, such as '0; 25.0'.");
        }
        boolean dated = clock == Clock.DATED;
        return new Series(Arrays.copyOf(times, rows), Arrays.copyOf(values, rows), dated ? origin : null);
    }

    private void takeLine(int number, String line, boolean first) {
        try {
            takeRow(line);
        } catch (Unreadable reason) {
            if (!(first && looksLikeHeading(line))) {
                note(number, reason.why);
            }
        }
    }

    /** A heading begins with a letter, as no time does. */
    private static boolean looksLikeHeading(String line) {
        String start = line.strip();
        int at = start.startsWith("\"") || start.startsWith("#") ? 1 : 0;
        String word = start.substring(at).strip();
        return !word.isEmpty() && Character.isLetter(word.charAt(0)) && !word.matches("(?i)(nan|inf).*");
    }

    private void takeRow(String line) throws Unreadable {
        if (rows == Series.MOST_ROWS) {
            throw new Invalid("rows", "There are more than " + Series.MOST_ROWS + " rows: thin the series out.");
        }
        if (line.length() > LONGEST_LINE) {
            throw new Unreadable(
                    "the line is longer than " + LONGEST_LINE + " characters; give only a time and a value.");
        }
        String tidy = line.replace('\u2212', '-').replace('\u00A0', ' ').strip();
        Separator by = separator == null ? separatorOf(tidy) : separator;
        String[] fields = split(tidy, by);
        Clock kind = clockOf(fields[0]);
        if (clock != null && clock != kind) {
            throw new Unreadable(
                    "its time is " + kind.words + ", the rows before give " + clock.words + "; use one kind.");
        }
        Instant instant = kind == Clock.SECONDS ? Instant.EPOCH : instant(fields[0], kind);
        Instant zero = origin == null ? instant : origin;
        double time = kind == Clock.SECONDS ? number(by, fields[0], "time") : seconds(zero, instant);
        append(time, number(by, fields[1], "value"));
        // Only a row that was taken settles how the rest is read.
        separator = by;
        clock = kind;
        origin = zero;
    }

    private void append(double time, double value) throws Unreadable {
        if (rows > 0 && time <= times[rows - 1]) {
            throw new Unreadable(notLaterReason(time, times[rows - 1]));
        }
        if (rows == times.length) {
            times = Arrays.copyOf(times, 2 * rows);
            values = Arrays.copyOf(values, 2 * rows);
        }
        times[rows] = time;
        values[rows] = value;
        rows++;
    }

    static String notLater(int row, double time, double before) {
        return "Row " + row + ": " + notLaterReason(time, before);
    }

    private static String notLaterReason(double time, double before) {
        return "its time, " + seconds(time) + ", is not later than the one before, " + seconds(before)
                + "; put the rows in order and leave repeated times out.";
    }

    private static String seconds(double time) {
        return BigDecimal.valueOf(time).stripTrailingZeros().toPlainString() + " s";
    }

    /** The first separator that gives two fields which can be read. */
    private static Separator separatorOf(String line) {
        for (Separator candidate : Separator.values()) {
            if (reads(line, candidate)) {
                return candidate;
            }
        }
        return likely(line);
    }

    /** For the refusal of a row that no separator makes readable. */
    private static Separator likely(String line) {
        for (Separator candidate : Separator.values()) {
            if (!candidate.sign.isEmpty() && line.contains(candidate.sign)) {
                return candidate;
            }
        }
        return Separator.SPACES;
    }

    private static boolean reads(String line, Separator candidate) {
        try {
            String[] fields = split(line, candidate);
            number(candidate, DATE.matcher(fields[0]).matches() ? "0" : fields[0], "time");
            number(candidate, fields[1], "value");
            return true;
        } catch (Unreadable other) {
            return false;
        }
    }

    private static String[] split(String line, Separator by) throws Unreadable {
        String[] fields = by == Separator.SPACES ? spaced(line) : separated(line, by.sign.charAt(0));
        if (fields.length != 2) {
            String hint =
                    by == Separator.COMMA && fields.length > 2 ? " (with decimal commas, separate by semicolons)" : "";
            throw new Unreadable("it has " + fields.length + (fields.length == 1 ? " field" : " fields")
                    + " separated by " + by.words + "; a time and a value are needed" + hint + ".");
        }
        return fields;
    }

    /** Splits at the last run of spaces: a date may hold one itself. */
    private static String[] spaced(String line) {
        String[] words = SPACES.split(line);
        boolean dateAndTime =
                words.length == 3 && DATE.matcher(words[0] + " " + words[1]).matches();
        return dateAndTime ? new String[] {words[0] + " " + words[1], words[2]} : words;
    }

    private static String[] separated(String line, char by) {
        List<String> fields = new ArrayList<>(2);
        boolean quoted = false;
        int from = 0;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == by && !quoted) {
                fields.add(unquoted(line.substring(from, i)));
                from = i + 1;
            }
        }
        fields.add(unquoted(line.substring(from)));
        return fields.toArray(new String[0]);
    }

    private static String unquoted(String field) {
        String bare = field.strip();
        boolean quoted = bare.length() >= 2 && bare.startsWith("\"") && bare.endsWith("\"");
        return quoted ? bare.substring(1, bare.length() - 1).strip() : bare;
    }

    private static Clock clockOf(String field) {
        if (!DATE.matcher(field).matches()) {
            return Clock.SECONDS;
        }
        return OFFSET.matcher(field).find(11) ? Clock.DATED : Clock.LOCAL;
    }

    private static Instant instant(String field, Clock kind) throws Unreadable {
        String iso = field.replaceFirst("[t ]", "T");
        try {
            return kind == Clock.DATED
                    ? OffsetDateTime.parse(iso).toInstant()
                    : LocalDateTime.parse(iso).toInstant(ZoneOffset.UTC);
        } catch (DateTimeException e) {
            throw new Unreadable("'" + field + "' is no date and time; write it like 2026-03-01T09:30:00Z.");
        }
    }

    private static double seconds(Instant from, Instant to) {
        return to.getEpochSecond() - from.getEpochSecond() + (to.getNano() - from.getNano()) / 1e9;
    }

    private static double number(Separator by, String field, String what) throws Unreadable {
        String plain = by == Separator.COMMA ? field : field.replace(',', '.');
        if (field.isEmpty()) {
            throw new Unreadable("its " + what + " is missing.");
        }
        if (!NUMBER.matcher(plain).matches()) {
            throw new Unreadable("its " + what + ", '" + field + "', is not a number"
                    + (what.equals("time") ? " of seconds or a date like 2026-03-01T09:30:00Z." : "."));
        }
        double number = Double.parseDouble(plain);
        if (Math.abs(number) > LARGEST) {
            throw new Unreadable("its " + what + ", '" + field + "', is larger than anything measured.");
        }
        return number;
    }

    private void note(int number, String reason) {
        unreadable++;
        if (problems.size() < MOST_PROBLEMS) {
            problems.add(new Invalid.Problem("rows[" + (number - 1) + "]", "Row " + number + ": " + reason));
        }
    }

    private void throwIfUnreadable() {
        if (unreadable > MOST_PROBLEMS) {
            int more = unreadable - MOST_PROBLEMS;
            problems.add(new Invalid.Problem("rows", "And " + more + " more rows that cannot be taken."));
        }
        if (unreadable > 0) {
            throw new Invalid(problems);
        }
    }
}
