package org.benchtrail.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Values as they were typed, by the path of their field: {@code watts}, {@code loads[2].watts}. Rows keep the number they
 * were typed under, even where rows before them were left empty.
 */
final class TypedValues {
    private static final Pattern ROW = Pattern.compile("([A-Za-z0-9]+)\\[([0-9]{1,6})]\\.([A-Za-z0-9]+)");

    private final Map<String, String> values = new LinkedHashMap<>();
    private final Map<String, Set<Integer>> rows = new HashMap<>();

    /** The fields of a form; a row in which nothing was typed is no row. */
    static TypedValues form(Map<String, ? extends List<String>> fields) {
        TypedValues typed = new TypedValues();
        fields.forEach((name, texts) -> {
            String text = texts.isEmpty() || texts.get(0) == null ? "" : texts.get(0);
            Matcher row = ROW.matcher(name);
            if (!row.matches()) {
                typed.put(name, text);
            } else if (!text.isBlank()) {
                typed.row(row.group(1), Integer.parseInt(row.group(2)));
                typed.put(path(row.group(1), Integer.parseInt(row.group(2)), row.group(3)), text);
            }
        });
        return typed;
    }

    static String path(String list, int row, String field) {
        return list + "[" + row + "]." + field;
    }

    TypedValues put(String path, String text) {
        values.put(path, text.replace("\r\n", "\n").strip());
        return this;
    }

    /** Says that there is such a row, even if nothing is in it. */
    TypedValues row(String list, int index) {
        rows.computeIfAbsent(list, l -> new TreeSet<>()).add(index);
        return this;
    }

    /** Everything typed, by path. */
    Map<String, String> all() {
        return java.util.Collections.unmodifiableMap(values);
    }

    /** What was typed; empty if nothing was. */
    String text(String path) {
        @Nullable String text = values.get(path);
        return text == null ? "" : text;
    }

    /** The numbers of the rows of a list, ascending. */
    List<Integer> rows(String list) {
        return new ArrayList<>(rows.getOrDefault(list, Set.of()));
    }
}
