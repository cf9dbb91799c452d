package org.benchtrail.platform;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** One of a few answers: what is sent and what is read. */
public record Option(String value, String words) {

    /** The constants of an enum, in its order and its own words. */
    public static <E extends Enum<E>> List<Option> of(Class<E> choices) {
        return Arrays.stream(choices.getEnumConstants())
                .map(c -> new Option(c.name(), words(c)))
                .toList();
    }

    public static List<Option> yesNo(String yes, String no) {
        return List.of(new Option("true", yes), new Option("false", no));
    }

    /** An enum constant in words: its own {@code words()}, {@code title()} or {@code label()} if it has one, else its name. */
    public static String words(Enum<?> constant) {
        for (String name : List.of("words", "title", "label")) {
            try {
                Method own = constant.getDeclaringClass().getMethod(name);
                return (String) own.invoke(constant);
            } catch (NoSuchMethodException e) {
                continue;
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        }
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
