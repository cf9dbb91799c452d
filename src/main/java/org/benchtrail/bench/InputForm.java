package org.benchtrail.bench;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.measure.TypedNumber;
import org.benchtrail.platform.Option;
import org.jspecify.annotations.Nullable;

/** Between an input record and typed text, by reflection over the record's components. */
final class InputForm {
    private static final int DIGITS = 15;
    private static final Pattern ENTRY = Pattern.compile("([A-Za-z0-9]+)\\[([0-9]+)](.*)");

    private final TypedValues typed;
    private final List<Invalid.Problem> problems = new ArrayList<>();

    private InputForm(TypedValues typed) {
        this.typed = typed;
    }

    /**
     * Reads what was typed and calculates.
     *
     * @throws Invalid naming every field whose text cannot be read or whose value the calculation refuses
     */
    static <I extends Record> Result calculate(Calculation<I> calculation, TypedValues typed) {
        I input = read(calculation.inputType(), typed);
        try {
            return calculation.calculate(input);
        } catch (Invalid refused) {
            throw new Invalid(asTyped(refused.problems(), typed));
        }
    }

    /**
     * The record that was typed.
     *
     * @throws Invalid naming every field whose text cannot be read or whose value the record refuses, under the names by
     *     which they were typed
     */
    static <I extends Record> I read(Class<I> type, TypedValues typed) {
        InputForm form = new InputForm(typed);
        List<Object> values = form.values("", InputField.of(type));
        List<Invalid.Problem> refused = new ArrayList<>();
        @Nullable I input = null;
        try {
            input = build(type, values);
        } catch (Invalid e) {
            refused.addAll(asTyped(e.problems(), typed));
        }
        form.addUnlessNamed(refused);
        if (input == null || !form.problems.isEmpty()) {
            throw new Invalid(form.problems);
        }
        return input;
    }

    /** Whether what was typed is nothing but the calculation's example. */
    static <I extends Record> boolean isExample(Calculation<I> calculation, TypedValues typed) {
        I example = read(calculation.inputType(), write(calculation.example()));
        return read(calculation.inputType(), typed).equals(example);
    }

    /** The text of every component, so that reading it gives an equal record. */
    static TypedValues write(Record input) {
        TypedValues typed = new TypedValues();
        write(typed, "", input);
        return typed;
    }

    // ---- reading

    /** What stands for a value that cannot be read (no number, null) is refused by the record as well: it is told once. */
    private void addUnlessNamed(List<Invalid.Problem> refused) {
        List<String> named = problems.stream().map(Invalid.Problem::field).toList();
        refused.stream().filter(p -> !named.contains(p.field())).forEach(problems::add);
    }

    private List<Object> values(String prefix, List<InputField> asked) {
        List<Object> values = new ArrayList<>();
        for (InputField field : asked) {
            values.add(value(prefix + field.name(), field));
        }
        return values;
    }

    private @Nullable Object value(String path, InputField field) {
        return switch (field.kind()) {
            case NUMBER -> number(path, field);
            case WHOLE -> whole(path, field);
            case TICK -> tick(path);
            case CHOICE -> choice(path, field);
            case TEXT -> typed.text(path);
            case NUMBERS -> numbers(path, field);
            case ROWS -> rows(path, field);
        };
    }

    private @Nullable Double number(String path, InputField field) {
        String text = typed.text(path);
        if (text.isBlank()) {
            if (field.required()) {
                problem(path, "give a number" + in(field.unit()));
            }
            return field.required() ? Double.valueOf(Double.NaN) : null;
        }
        BigDecimal value = decimal(path, text, field.unit());
        return value == null ? Double.valueOf(Double.NaN) : Double.valueOf(value.doubleValue());
    }

    private int whole(String path, InputField field) {
        String text = typed.text(path);
        if (text.isBlank()) {
            problem(path, "give a whole number" + in(field.unit()));
            return Integer.MIN_VALUE;
        }
        BigDecimal value = decimal(path, text, field.unit());
        try {
            return value == null ? Integer.MIN_VALUE : value.intValueExact();
        } catch (ArithmeticException e) {
            problem(path, "give a whole number of at most " + Integer.MAX_VALUE + ", not '" + text + "'");
            return Integer.MIN_VALUE;
        }
    }

    /** Null if it cannot be read, which is then told. */
    private @Nullable BigDecimal decimal(String path, String text, String unit) {
        try {
            return unit.isEmpty() ? plain(path, text) : TypedNumber.in(unit, path, text);
        } catch (Invalid e) {
            problems.addAll(e.problems());
            return null;
        }
    }

    /** A number without a unit of its own; where the form asks for a unit by name, it may be typed behind the number as well. */
    private BigDecimal plain(String path, String text) {
        TypedNumber number = TypedNumber.read(path, text);
        return number.rest().equals(typed.text("unit")) ? number.value() : TypedNumber.in("", path, text);
    }

    private static String in(String unit) {
        return unit.isEmpty() ? "" : " in " + unit;
    }

    private boolean tick(String path) {
        String text = typed.text(path);
        if (!List.of("", "true", "false").contains(text)) {
            problem(path, "give true or false");
        }
        return text.equals("true");
    }

    private @Nullable Object choice(String path, InputField field) {
        String text = typed.text(path);
        Object chosen = Arrays.stream(field.type().getEnumConstants())
                .filter(c -> ((Enum<?>) c).name().equals(text))
                .findFirst()
                .orElse(null);
        if (chosen == null) {
            String names = field.options().stream().map(Option::value).collect(Collectors.joining(", "));
            problem(path, text.isBlank() ? "choose one of the values" : "choose one of " + names);
        }
        return chosen;
    }

    /** One number to a line; a semicolon, or a comma with a space after it, parts them as well. */
    private List<Double> numbers(String path, InputField field) {
        List<Double> numbers = new ArrayList<>();
        for (String part : typed.text(path).split("[\\n;]|,\\s+|,$")) {
            if (!part.isBlank()) {
                numbers.add(entry(path, numbers.size(), part.strip(), field.unit()));
            }
        }
        return numbers;
    }

    private Double entry(String path, int index, String text, String unit) {
        String at = path + "[" + index + "]";
        if (text.matches(".*[0-9]\\s+[0-9].*")) {
            problem(at, "put each number on a line of its own, not '" + text + "'");
            return Double.NaN;
        }
        BigDecimal value = decimal(at, text, unit);
        return value == null ? Double.valueOf(Double.NaN) : Double.valueOf(value.doubleValue());
    }

    private List<Object> rows(String path, InputField field) {
        List<Object> rows = new ArrayList<>();
        for (int row : typed.rows(path)) {
            List<Object> values = values(TypedValues.path(path, row, ""), field.fields());
            try {
                rows.add(build(field.type().asSubclass(Record.class), values));
            } catch (Invalid e) {
                e.problems().forEach(p -> problem(TypedValues.path(path, row, p.field()), p.sentence()));
            }
        }
        return rows;
    }

    private void problem(String path, String sentence) {
        problems.add(new Invalid.Problem(path, sentence));
    }

    /** A record knows its rows by their place; a person knows them by the row they typed in. */
    private static List<Invalid.Problem> asTyped(List<Invalid.Problem> problems, TypedValues typed) {
        return problems.stream()
                .map(p -> new Invalid.Problem(asTyped(p.field(), typed), p.sentence()))
                .toList();
    }

    private static String asTyped(String field, TypedValues typed) {
        Matcher entry = ENTRY.matcher(field);
        if (!entry.matches()) {
            return field;
        }
        List<Integer> rows = typed.rows(entry.group(1));
        int place = Integer.parseInt(entry.group(2));
        return place < rows.size() ? entry.group(1) + "[" + rows.get(place) + "]" + entry.group(3) : field;
    }

    private static <R extends Record> R build(Class<R> type, List<Object> values) {
        try {
            Class<?>[] types = Arrays.stream(type.getRecordComponents())
                    .map(RecordComponent::getType)
                    .toArray(Class<?>[]::new);
            Constructor<R> constructor = type.getDeclaredConstructor(types);
            return constructor.newInstance(values.toArray());
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof Invalid refused) {
                throw refused;
            }
            throw new IllegalStateException(e.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    // ---- writing

    private static void write(TypedValues typed, String prefix, Record input) {
        for (RecordComponent component : input.getClass().getRecordComponents()) {
            String path = prefix + component.getName();
            Object value = value(component, input);
            if (value instanceof List<?> list) {
                writeList(typed, path, list);
            } else if (value != null) {
                typed.put(path, text(value));
            }
        }
    }

    private static void writeList(TypedValues typed, String path, List<?> list) {
        for (int i = 0; i < list.size(); i++) {
            if (list.get(i) instanceof Record row) {
                typed.row(path, i);
                write(typed, TypedValues.path(path, i, ""), row);
            }
        }
        if (list.stream().noneMatch(Record.class::isInstance)) {
            typed.put(
                    path,
                    list.stream().filter(Objects::nonNull).map(InputForm::text).collect(Collectors.joining("\n")));
        }
    }

    private static @Nullable Object value(RecordComponent component, Record input) {
        try {
            return component.getAccessor().invoke(input);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String text(Object value) {
        if (value instanceof Double number) {
            return Numeral.of(number, DIGITS);
        }
        return value instanceof Enum<?> choice ? choice.name() : value.toString();
    }
}
