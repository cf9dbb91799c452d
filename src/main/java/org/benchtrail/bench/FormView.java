package org.benchtrail.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.bench.InputField.Kind;
import org.benchtrail.core.Invalid;
import org.benchtrail.platform.Option;

/**
 * A calculation's form in ready text.
 *
 * @param problems what is wrong, each with the label of its field and the place on the page that cures it
 * @param live what is exchanged besides the result when a value changes: the sentences beside the fields, and the one that
 *     is read out
 */
public record FormView(List<Field> fields, List<Problem> problems, String live) {
    private static final int SPARE_ROWS = 3;

    /**
     * @param kind how it is asked: number, text, area, tick, choice, list or rows
     * @param cellHints for kind rows: where each column is read off, once for all rows
     * @param error what is wrong with it, empty if nothing is
     * @param rows for kind rows: those filled in
     * @param spare for kind rows: empty ones
     */
    public record Field(
            String name,
            String id,
            String kind,
            String label,
            String unit,
            String hint,
            List<String> cellHints,
            int lines,
            String value,
            boolean ticked,
            List<Option> options,
            String error,
            List<Row> rows,
            List<Row> spare) {}

    public record Row(String title, List<Field> fields) {}

    public record Problem(String id, String label, String sentence) {}

    static FormView of(List<InputField> asked, TypedValues typed, List<Invalid.Problem> found) {
        Map<String, String> errors = new HashMap<>();
        found.forEach(p -> errors.merge(place(asked, p.field()), sentence(p), (one, other) -> one + " " + other));
        List<Field> fields =
                asked.stream().map(a -> field(a.name(), a, typed, errors, true)).toList();
        String live = fields.stream()
                .flatMap(FormView::places)
                .map(id -> "#" + id + "-error")
                .collect(Collectors.joining(",", "#spoken:innerHTML,", ""));
        List<String> order = asked.stream().map(InputField::name).toList();
        List<Problem> problems = found.stream()
                .sorted(Comparator.comparingInt(p -> order.indexOf(p.field().replaceAll("[\\[.].*", ""))))
                .map(p -> new Problem(id(place(asked, p.field())), label(asked, p.field()), p.sentence()))
                .toList();
        return new FormView(fields, problems, live);
    }

    private static Field field(
            String path, InputField asked, TypedValues typed, Map<String, String> errors, boolean hint) {
        List<Integer> filled = typed.rows(path);
        int next = filled.isEmpty() ? 0 : filled.get(filled.size() - 1) + 1;
        List<Row> rows = new ArrayList<>();
        List<Row> spare = new ArrayList<>();
        if (asked.kind() == Kind.ROWS) {
            for (int row : filled) {
                rows.add(row(path, row, asked, typed, errors));
            }
            for (int row = next; row < next + SPARE_ROWS; row++) {
                spare.add(row(path, row, asked, typed, errors));
            }
        }
        return new Field(
                path,
                id(path),
                kind(asked),
                asked.label(),
                asked.unit(),
                hint ? asked.hint() : "",
                asked.fields().stream()
                        .filter(f -> !f.hint().isEmpty())
                        .map(f -> f.label() + ": " + f.hint())
                        .toList(),
                Math.max(asked.lines(), typed.text(path).split("\n", -1).length + 1),
                typed.text(path),
                typed.text(path).equals("true"),
                asked.options(),
                errors.getOrDefault(path, ""),
                rows,
                spare);
    }

    /** One row, called by the place it was typed at; the hints stand above all rows. */
    private static Row row(String list, int row, InputField asked, TypedValues typed, Map<String, String> errors) {
        List<Field> fields = asked.fields().stream()
                .map(f -> field(TypedValues.path(list, row, f.name()), f, typed, errors, false))
                .toList();
        return new Row(asked.label() + ", row " + (row + 1), fields);
    }

    private static String kind(InputField asked) {
        return switch (asked.kind()) {
            case NUMBER, WHOLE -> "number";
            case TICK -> "tick";
            case CHOICE -> "choice";
            case TEXT -> asked.lines() > 1 ? "area" : "text";
            case NUMBERS -> "list";
            case ROWS -> "rows";
        };
    }

    private static Stream<String> places(Field field) {
        return Stream.concat(
                Stream.of(field.id()),
                Stream.concat(field.rows().stream(), field.spare().stream())
                        .flatMap(row -> row.fields().stream().map(Field::id)));
    }

    private static String sentence(Invalid.Problem problem) {
        String text = problem.sentence();
        return text.isEmpty() ? "" : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + stop(text);
    }

    private static String stop(String text) {
        return text.endsWith(".") || text.endsWith("?") ? "" : ".";
    }

    /** The field in which a path is typed: numbers of one kind share a field. */
    private static String place(List<InputField> asked, String path) {
        return asked.stream()
                .filter(a -> a.kind() == Kind.NUMBERS && path.startsWith(a.name() + "["))
                .findFirst()
                .map(InputField::name)
                .orElse(path);
    }

    private static String label(List<InputField> asked, String path) {
        String name = path.replaceAll("\\[.*", "");
        String row = path.replaceAll("^[^\\[]*\\[([0-9]+)].*$|^[^\\[]*$", "$1");
        String number = row.isEmpty() ? "" : ", row " + (Long.parseLong(row) + 1);
        String part = path.replaceAll("^.*]\\.|^[^.]*$", "");
        return asked.stream()
                .filter(a -> a.name().equals(name))
                .map(a -> a.label()
                        + number
                        + a.fields().stream()
                                .filter(f -> f.name().equals(part))
                                .map(f -> ", " + f.label())
                                .findFirst()
                                .orElse(""))
                .findFirst()
                .orElse(path);
    }

    /** A field's id on the page: its path with nothing in it that an address or a selector would stumble over. */
    private static String id(String path) {
        return "f-" + path.replaceAll("[^A-Za-z0-9]+", "-");
    }
}
