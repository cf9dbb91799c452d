package org.benchtrail.core.method;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The table of words that raise cautions. */
final class CautionWords {
    private static final String TABLE = "cautions.tsv";
    private static final Map<Caution, Pattern> WORDS = load();

    private CautionWords() {}

    static Set<Caution> raisedBy(String act) {
        Set<Caution> raised = EnumSet.noneOf(Caution.class);
        String text = act.toLowerCase(Locale.ROOT);
        WORDS.forEach((caution, words) -> {
            if (words.matcher(text).find()) {
                raised.add(caution);
            }
        });
        return Collections.unmodifiableSet(raised);
    }

    /** The pattern of a caution's words; empty if no word raises it. */
    static String words(Caution caution) {
        Pattern words = WORDS.get(caution);
        return words == null ? "" : words.pattern();
    }

    private static Map<Caution, Pattern> load() {
        Map<Caution, Pattern> words = new EnumMap<>(Caution.class);
        try (InputStream in = CautionWords.class.getResourceAsStream(TABLE);
                BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            lines.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("caution\t") && !line.isBlank())
                    .map(line -> line.split("\t", 2))
                    .forEach(cells -> words.put(Caution.valueOf(cells[0]), pattern(cells[1])));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return words;
    }

    private static Pattern pattern(String words) {
        return Pattern.compile(Arrays.stream(words.split(","))
                .map(String::strip)
                .map(Pattern::quote)
                .collect(Collectors.joining("|", "\\b(?:", ")(?:s|es)?\\b")));
    }
}
