package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
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
    private static final int LENGTH = 1500;
    private static final int STEPS_PER_CHARACTER = 60;

    private static final Pattern CALL = Pattern.compile(
            "(?:Pattern\\.compile|\\.matches|\\.replaceAll|\\.replaceFirst|\\.split)\\(\\s*((?:\"(?:[^\"\\\\\n]|\\\\.)*+\"\\s*\\+?\\s*)++)");
    private static final Pattern PART = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*+)\"");
    private static final Pattern UNICODE = Pattern.compile("(?<!\\\\)((?:\\\\\\\\)*)\\\\u([0-9a-fA-F]{4})");
    private static final String OTHERS = "0a \n.,-[";
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

    /** Each with whether it is searched for within a text; otherwise the whole text has to be it. */
    private static Map<String, Boolean> patterns() {
        Map<String, Boolean> found = new LinkedHashMap<>();
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                String code = Files.readString(file);
                Matcher call = CALL.matcher(code);
                while (call.find()) {
                    StringBuilder literal = new StringBuilder();
                    Matcher part = PART.matcher(call.group(1));
                    while (part.find()) {
                        literal.append(part.group(1));
                    }
                    String pattern = UNICODE.matcher(literal)
                            .replaceAll(
                                    u -> Matcher.quoteReplacement(u.group(1) + (char) Integer.parseInt(u.group(2), 16)))
                            .translateEscapes();
                    found.merge(pattern, isSearched(call.group(), code), Boolean::logicalOr);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found;
    }

    private static boolean isSearched(String call, String code) {
        return call.startsWith("Pattern")
                ? code.contains(".find()") || code.contains(".results()") || code.contains(".lookingAt()")
                : !call.startsWith(".matches");
    }

    private static List<String> texts(String pattern) {
        Set<Character> letters = new LinkedHashSet<>();
        (ALWAYS + pattern).chars().forEach(c -> letters.add((char) c));
        List<String> texts = new ArrayList<>();
        for (char one : letters) {
            texts.add(("" + one).repeat(LENGTH) + "\u0001");
            for (char other : OTHERS.toCharArray()) {
                texts.add(("" + one + other).repeat(LENGTH / 2) + "\u0001");
                texts.add(other + ("" + one).repeat(LENGTH) + "\u0001");
            }
        }
        return texts;
    }

    private static String wrong(Pattern pattern, boolean searching, String text) {
        try {
            Matcher looking = pattern.matcher(new Counted(text));
            if (searching) {
                while (looking.find()) {
                    // on to the next
                }
            } else {
                looking.matches();
            }
            return "";
        } catch (TooManySteps e) {
            return "goes over it again and again";
        } catch (StackOverflowError e) {
            return "runs out of stack";
        }
    }

    @Test
    void noPattern_goesOverATextAgainAndAgain() {
        Map<String, Boolean> patterns = patterns();
        assertTrue(patterns.size() > 80, patterns.size() + " patterns");
        Map<String, String> wrong = new TreeMap<>();
        for (Map.Entry<String, Boolean> one : patterns.entrySet()) {
            String source = one.getKey();
            Pattern pattern;
            try {
                pattern = Pattern.compile(source);
            } catch (PatternSyntaxException partOfOne) {
                continue;
            }
            for (String text : texts(source)) {
                String said = wrong(pattern, one.getValue(), text);
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
