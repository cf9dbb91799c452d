package org.benchtrail.platform.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.InvalidTypeIdException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.jspecify.annotations.Nullable;

/**
 * What is wrong in a text or tree that could not be read into its record: each fault with the field that holds it, such as
 * {@code loads[2].watts} or {@code answers.PLACE}, and a sentence that says what to do. A record's own refusal keeps its fields and
 * sentences.
 */
public final class Faults {
    private static final String NO_FIT = "This value does not fit its field.";

    private Faults() {}

    /**
     * As a program is told it.
     *
     * @param noun what was to be read, such as {@code fact}: stands in the sentences
     */
    public static List<Problem> ofJson(JsonProcessingException failure, String noun) {
        String path = failure instanceof JsonMappingException mapping ? path(mapping) : "";
        Invalid own = refusal(failure);
        if (own != null) {
            return below(path, own.problems());
        }
        if (failure instanceof InvalidTypeIdException unknown) {
            return below(path, List.of(new Problem("kind", noKind(unknown.getTypeId(), noun))));
        }
        return List.of(new Problem(path.isEmpty() ? "body" : path, sentence(failure, noun)));
    }

    /**
     * As a person is told it, who typed into the fields of a group.
     *
     * @param group the prefix of the fields, without its dot; empty if they have none
     */
    public static List<Problem> ofForm(IllegalArgumentException failure, String group) {
        Invalid own = refusal(failure);
        if (own != null) {
            return below(group, own.problems());
        }
        return causes(failure)
                .filter(InvalidFormatException.class::isInstance)
                .map(InvalidFormatException.class::cast)
                .findFirst()
                .map(format -> below(group, List.of(new Problem(field(format), typed(format)))))
                .orElse(List.of(new Problem(group, "This could not be read: check what was typed.")));
    }

    /** The way to the value that is wrong: names parted by dots, places in lists as {@code [2]}; empty for the whole. */
    public static String path(JsonMappingException failure) {
        return failure.getPath().stream()
                .map(step -> step.getFieldName() == null ? "[" + step.getIndex() + "]" : "." + step.getFieldName())
                .collect(Collectors.joining())
                .replaceFirst("^\\.", "");
    }

    /** Where a text is no JSON or does not fit; never the text itself, which may hold a secret. */
    public static String place(JsonProcessingException failure) {
        String line = failure.getLocation() == null
                ? ""
                : " at line " + failure.getLocation().getLineNr() + ", column "
                        + failure.getLocation().getColumnNr();
        if (failure instanceof JsonMappingException mapping
                && !mapping.getPath().isEmpty()) {
            return "The value of " + path(mapping) + " does not fit" + line + ".";
        }
        return "The body is not the JSON expected" + line + ".";
    }

    private static List<Problem> below(String path, List<Problem> problems) {
        return path.isEmpty()
                ? problems
                : problems.stream()
                        .map(p -> new Problem(path + "." + p.field(), p.sentence()))
                        .toList();
    }

    /** The refusal by the record itself, which a reader wraps. */
    private static @Nullable Invalid refusal(Throwable failure) {
        return causes(failure)
                .filter(Invalid.class::isInstance)
                .map(Invalid.class::cast)
                .findFirst()
                .orElse(null);
    }

    private static Stream<Throwable> causes(Throwable failure) {
        return Stream.iterate(failure, Objects::nonNull, Throwable::getCause);
    }

    private static String noKind(@Nullable String given, String noun) {
        return given == null
                ? "Say which kind of " + noun + " this is; /q/openapi lists the kinds."
                : "There is no kind of " + noun + " '" + given + "'; /q/openapi lists the kinds.";
    }

    private static String sentence(JsonProcessingException failure, String noun) {
        if (failure instanceof UnrecognizedPropertyException unknown) {
            String known = unknown.getKnownPropertyIds().stream()
                    .map(Object::toString)
                    .sorted()
                    .collect(Collectors.joining(", "));
            String article = "aeiou".indexOf(noun.charAt(0)) < 0 ? "A " : "An ";
            return article + noun + " of this kind has no such field; it has: " + known + ".";
        }
        return failure instanceof MismatchedInputException mismatch ? wanted(mismatch.getTargetType()) : NO_FIT;
    }

    private static String wanted(@Nullable Class<?> type) {
        if (type == null) {
            return NO_FIT;
        }
        if (type.isEnum()) {
            return Arrays.stream(type.getEnumConstants())
                    .map(Objects::toString)
                    .collect(Collectors.joining(", ", "Choose one of: ", "."));
        }
        return switch (type.getSimpleName()) {
            case "int", "Integer", "long", "Long" -> "Give a whole number.";
            case "boolean", "Boolean" -> "Give true or false.";
            case "String" -> "Give a text in quotes.";
            case "Instant" -> "Give a moment such as 2031-03-03T08:00:00Z.";
            case "List", "Set" -> "Give a list in brackets.";
            case "Map" -> "Give an object in braces.";
            default -> NO_FIT;
        };
    }

    /** All values of one name share a field of the form. */
    private static String field(JsonMappingException failure) {
        return path(failure).replaceFirst("\\[\\d+]$", "");
    }

    private static String typed(InvalidFormatException failure) {
        boolean whole = Set.of(int.class, Integer.class, long.class).contains(failure.getTargetType());
        return whole
                ? "Write a whole number here, not '" + failure.getValue() + "'."
                : "'" + failure.getValue() + "' cannot be chosen here.";
    }
}
