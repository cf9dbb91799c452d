package org.benchtrail.bench;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.benchtrail.bench.InputField.Kind;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** A JSON object as typed text, so that programs and forms are read by the same rules. A member that is null is left out. */
final class JsonInput {
    private final TypedValues typed = new TypedValues();
    private final List<Invalid.Problem> problems = new ArrayList<>();

    private JsonInput() {}

    /** @throws Invalid if it is no object, names what is not asked for, or holds another kind of value than is asked for */
    static TypedValues read(List<InputField> asked, @Nullable JsonNode input) {
        if (input == null || !input.isObject()) {
            throw new Invalid("body", "Send the values as a JSON object.");
        }
        JsonInput reading = new JsonInput();
        reading.object("", asked, input);
        if (!reading.problems.isEmpty()) {
            throw new Invalid(reading.problems);
        }
        return reading.typed;
    }

    private void object(String prefix, List<InputField> asked, JsonNode object) {
        object.fieldNames()
                .forEachRemaining(name -> asked.stream()
                        .filter(a -> a.name().equals(name))
                        .findFirst()
                        .ifPresentOrElse(
                                a -> member(prefix + name, a, object.get(name)),
                                () -> problem(prefix + name, "leave this out; asked for are " + names(asked))));
    }

    private void member(String path, InputField asked, JsonNode value) {
        if (value.isNull()) {
            return;
        }
        switch (asked.kind()) {
            case NUMBERS -> numbers(path, value);
            case ROWS -> rows(path, asked, value);
            default -> {
                if (fits(asked.kind(), value)) {
                    typed.put(path, value.asText());
                } else {
                    problem(path, "give " + wanted(asked.kind()));
                }
            }
        }
    }

    private static boolean fits(Kind kind, JsonNode value) {
        return switch (kind) {
            case NUMBER, WHOLE -> value.isNumber();
            case TICK -> value.isBoolean();
            default -> value.isTextual();
        };
    }

    private static String wanted(Kind kind) {
        return switch (kind) {
            case NUMBER, WHOLE -> "a number";
            case TICK -> "true or false";
            default -> "a text";
        };
    }

    private void numbers(String path, JsonNode list) {
        if (!list.isArray()) {
            problem(path, "give a list of numbers");
            return;
        }
        List<String> texts = new ArrayList<>();
        for (JsonNode entry : list) {
            if (!entry.isNumber()) {
                problem(path + "[" + texts.size() + "]", "give a number");
            }
            texts.add(entry.asText());
        }
        typed.put(path, String.join("\n", texts));
    }

    private void rows(String path, InputField asked, JsonNode list) {
        if (!list.isArray()) {
            problem(path, "give a list of objects");
            return;
        }
        for (int row = 0; row < list.size(); row++) {
            typed.row(path, row);
            if (list.get(row).isObject()) {
                object(TypedValues.path(path, row, ""), asked.fields(), list.get(row));
            } else {
                problem(path + "[" + row + "]", "give an object");
            }
        }
    }

    private static String names(List<InputField> asked) {
        return asked.stream().map(InputField::name).collect(Collectors.joining(", "));
    }

    private void problem(String path, String sentence) {
        problems.add(new Invalid.Problem(path, sentence));
    }
}
