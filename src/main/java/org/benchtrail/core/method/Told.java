package org.benchtrail.core.method;

import java.util.Collection;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Pieces of what a fact says, put together in one line. */
public final class Told {
    private Told() {}

    /** Those that say something; what ends with a full stop goes on without it. */
    public static String all(String... parts) {
        return Stream.of(parts)
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining("; "))
                .replace(".; ", "; ");
    }

    /** An answer with what was written beside it; the answer alone if that is nothing. */
    public static String noted(String answer, String note) {
        return answer.isEmpty() || note.isEmpty() ? answer + note : answer + ": " + note;
    }

    /** What a text is, before it; nothing if it is empty. */
    public static String labelled(String label, String text) {
        return text.isEmpty() ? "" : label + ": " + text;
    }

    public static <T> String list(Collection<T> many, Function<T, String> words) {
        return many.stream().map(words).collect(Collectors.joining(", "));
    }

    /** The title of a requirement; of a rule that is none, its code in words. */
    public static String requirement(String code) {
        return Requirements.of(code).map(Requirement::title).orElse(code.replace('-', ' '));
    }

    /** The name of a constant that has no words of its own. */
    public static String plain(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
