package org.benchtrail.bench;

import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.bench.Choice;
import org.benchtrail.platform.Option;

/** The choices of the bench as a form offers them. */
final class ChoiceWords {
    private ChoiceWords() {}

    static String of(Enum<?> choice) {
        return choice instanceof Choice own ? own.words() : Option.words(choice);
    }

    /** The constants of an enum, in its order. */
    static List<Option> options(Class<?> choices) {
        return Arrays.stream(choices.getEnumConstants())
                .map(c -> new Option(((Enum<?>) c).name(), of((Enum<?>) c)))
                .toList();
    }
}
