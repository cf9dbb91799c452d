package org.benchtrail.core.method;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The table of words that raise cautions, {@code cautions.tsv}; how it is read stands at its head.
 *
 * <p>A text is taken clause by clause. An act raises a caution by the mere name of what it touches, unless its clause only
 * looks, asks or orders. What is told (an expectation, a result) raises one only where the clause says that hands were laid
 * on something. Rows that hold always do so in either.
 */
final class CautionWords {
    private static final String TABLE = "cautions.tsv";
    /** A voltage that hurts: 50 V or more, any kilovolts, and whatever is said to be AC. */
    private static final String VOLTS =
            "(?:(?:[5-9]\\d|[1-9]\\d{2,})(?:[.,]\\d+)?[ -]?v(?:olts?)?|\\d+(?:[.,]\\d+)?[ -]?kv|v(?:olts?)?[ -]?ac"
                    + "|\\d+(?:[.,]\\d+)?[ -]?v(?:olts?)?[ -]?ac)";

    private static final Pattern CLAUSE =
            Pattern.compile("[.,;:!?](?=\\s|$)|\\s(?:and|then|but|before|after|while)(?=\\s)|\\n");
    private static final CautionWords TABLE_OF_WORDS = load();

    /** One row: any of its words, with one of the others if there are any, in a clause that has none of the last. */
    private record Row(Caution caution, boolean always, Pattern words, Pattern with, Pattern unless) {}

    private final Pattern looks;
    private final Pattern goesOn;
    private final Pattern hands;
    private final Pattern changes;
    private final List<Row> rows;

    private CautionWords(Map<String, String> lists, List<String[]> table) {
        looks = Pattern.compile("\\s*" + pattern("@look", lists).pattern());
        goesOn = Pattern.compile("\\s*" + pattern("@small", lists).pattern());
        hands = pattern("@hand", lists);
        changes = pattern("@change", lists);
        rows = table.stream().map(cells -> row(cells, lists)).toList();
    }

    /** By what somebody does or means to do. */
    static Set<Caution> raisedBy(String act) {
        return TABLE_OF_WORDS.raised(act, false);
    }

    /** By what somebody tells or expects. */
    static Set<Caution> toldBy(String told) {
        return TABLE_OF_WORDS.raised(told, true);
    }

    /** Whether some clause lays hands on something, or stops or changes it. */
    static boolean touches(String act) {
        return TABLE_OF_WORDS.hands.matcher(act.toLowerCase(Locale.ROOT)).find()
                || TABLE_OF_WORDS.changes.matcher(act.toLowerCase(Locale.ROOT)).find();
    }

    private Set<Caution> raised(String text, boolean told) {
        String whole = text.toLowerCase(Locale.ROOT).replace('\u2019', '\'');
        Set<Caution> raised = EnumSet.noneOf(Caution.class);
        boolean looking = false;
        for (String clause : CLAUSE.split(whole)) {
            boolean handled = hands.matcher(clause).find();
            looking = !handled
                    && (looks.matcher(clause).lookingAt()
                            || (looking && goesOn.matcher(clause).lookingAt()));
            boolean touched = told ? handled : !looking;
            for (Row row : rows) {
                if ((row.always || touched) && says(row, clause, whole)) {
                    raised.add(row.caution);
                }
            }
        }
        return Collections.unmodifiableSet(raised);
    }

    private static boolean says(Row row, String clause, String whole) {
        return row.words.matcher(clause).find()
                && row.with.matcher(whole).find()
                && !row.unless.matcher(clause).find();
    }

    private static Row row(String[] cells, Map<String, String> lists) {
        Pattern with = cells.length > 3 && !cells[3].isBlank() ? pattern(cells[3], lists) : Pattern.compile("");
        Pattern unless = cells.length > 4 ? pattern(cells[4], lists) : Pattern.compile("(?!)");
        return new Row(Caution.valueOf(cells[0]), cells[1].equals("always"), pattern(cells[2], lists), with, unless);
    }

    private static CautionWords load() {
        Map<String, String> lists = new HashMap<>();
        List<String[]> rows = new ArrayList<>();
        try (InputStream in = CautionWords.class.getResourceAsStream(TABLE);
                BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            lines.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("caution\t") && !line.isBlank())
                    .map(line -> line.split("\t"))
                    .forEach(cells -> {
                        if (cells[0].startsWith("@")) {
                            lists.put(cells[0], cells[1]);
                        } else {
                            rows.add(cells);
                        }
                    });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new CautionWords(lists, rows);
    }

    /** Whole words, in any of their forms. */
    private static Pattern pattern(String words, Map<String, String> lists) {
        return Pattern.compile(words(words, lists)
                .map(CautionWords::term)
                .collect(Collectors.joining("|", "(?<![\\p{L}\\p{N}])(?:", ")(?![\\p{L}\\p{N}])")));
    }

    private static Stream<String> words(String words, Map<String, String> lists) {
        return Stream.of(words.split(","))
                .map(String::strip)
                .flatMap(word -> word.startsWith("@")
                        ? words(Objects.requireNonNull(lists.get(word), word), lists)
                        : Stream.of(word));
    }

    private static String term(String words) {
        return words.equals("#volts")
                ? VOLTS
                : Stream.of(words.split(" ")).map(CautionWords::forms).collect(Collectors.joining("[ -]+"));
    }

    /** A word as noun and as verb: its plural, its past and its continuing form. */
    private static String forms(String word) {
        char last = word.charAt(word.length() - 1);
        String stem = Pattern.quote(word.substring(0, word.length() - 1));
        if (word.length() < 3) {
            return Pattern.quote(word);
        }
        return switch (last) {
            case 'e' -> stem + "(?:e(?:s|d|'s)?|ing)";
            case 'y' -> stem + "(?:y(?:s|'s|ed|ing)?|ies|ied)";
            default -> Pattern.quote(word) + "(?:s|es|'s|ed|ing|" + last + "ed|" + last + "ing)?";
        };
    }
}
