package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * No pattern of the program goes over a text again and again: each is let loose on long texts of one and two characters, and may look at
 * each character a few dozen times. Steps are counted and not time, so that it says the same on every machine.
 */
class PatternStepsTest {
    private static final int LENGTH = 6000;
    private static final int STEPS_PER_CHARACTER = 60;

    private static final Pattern CALL = Pattern.compile(
            "(?:Pattern\\.compile|\\.matches|\\.replaceAll|\\.replaceFirst|\\.split)\\(\\s*((?:\"(?:[^\"\\\\\n]|\\\\.)*+\"\\s*\\+?\\s*)++)");
    private static final Pattern PART = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*+)\"");
    private static final Pattern UNICODE = Pattern.compile("(?<!\\\\)((?:\\\\\\\\)*)\\\\u([0-9a-fA-F]{4})");
    private static final String ALWAYS = "0aZ \t\n.,-+'[]:/%\u00b0";

    /** Told when a pattern looks at a text more often than it may. */
    private static final class TooManySteps extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    /** Counts how often a character is looked at. */
    private static final class Counted implements CharSequence {
        private final String text;
        private long left;

        Counted(String text) {
            this.text = text;
            left = (long) STEPS_PER_CHARACTER * (text.length() + 100);
        }

        @Override
        public int length() {
            return text.length();
        }

        @Override
        public char charAt(int index) {
            if (--left < 0) {
                throw new TooManySteps();
            }
            return text.charAt(index);
        }

        @Override
        public CharSequence subSequence(int start, int end) {
            return text.subSequence(start, end);
        }

        @Override
        public String toString() {
            return text;
        }
    }

    private static Set<String> patterns() {
        Set<String> found = new LinkedHashSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                Matcher call = CALL.matcher(Files.readString(file));
                while (call.find()) {
                    StringBuilder literal = new StringBuilder();
                    Matcher part = PART.matcher(call.group(1));
                    while (part.find()) {
                        literal.append(part.group(1));
                    }
                    found.add(UNICODE.matcher(literal)
                            .replaceAll(
                                    u -> Matcher.quoteReplacement(u.group(1) + (char) Integer.parseInt(u.group(2), 16)))
                            .translateEscapes());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found;
    }

    private static List<String> texts(String pattern) {
        Set<Character> letters = new LinkedHashSet<>();
        (ALWAYS + pattern).chars().forEach(c -> letters.add((char) c));
        List<String> texts = new ArrayList<>();
        for (char one : letters) {
            texts.add(("" + one).repeat(LENGTH) + "\u0001");
            for (char other : ALWAYS.toCharArray()) {
                texts.add(("" + one + other).repeat(LENGTH / 2) + "\u0001");
                texts.add(other + ("" + one).repeat(LENGTH) + "\u0001");
            }
        }
        return texts;
    }

    private static String wrong(Pattern pattern, String text) {
        try {
            Matcher search = pattern.matcher(new Counted(text));
            while (search.find()) {
                // on to the next
            }
            pattern.matcher(new Counted(text)).matches();
            return "";
        } catch (TooManySteps e) {
            return "goes over it again and again";
        } catch (StackOverflowError e) {
            return "runs out of stack";
        }
    }

    @Test
    void noPattern_goesOverATextAgainAndAgain() {
        Set<String> patterns = patterns();
        assertTrue(patterns.size() > 80, patterns.size() + " patterns");
        Map<String, String> wrong = new TreeMap<>();
        for (String source : patterns) {
            Pattern pattern;
            try {
                pattern = Pattern.compile(source);
            } catch (PatternSyntaxException partOfOne) {
                continue;
            }
            for (String text : texts(source)) {
                String said = wrong(pattern, text);
                if (!said.isEmpty()) {
                    wrong.put(source, said + ": " + text.substring(0, 4).replace("\n", "\\n"));
                    break;
                }
            }
        }
        System.out.println(
                patterns.size() + " patterns looked at, " + wrong.size() + " go over a text again and again");
        assertEquals(Map.of(), wrong);
    }
}
