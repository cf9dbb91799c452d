package org.benchtrail.platform.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid.Problem;
import org.jspecify.annotations.Nullable;

/** What the fields of a page's forms hold: what was typed and not yet taken, else what is stored; and what is wrong with each. */
public final class FormValues {
    private static final ObjectMapper MAPPER =
            JsonMapper.builder().addModule(new JavaTimeModule()).build();

    private final Map<String, List<String>> values = new HashMap<>();
    private final Map<String, String> errors = new HashMap<>();
    private final Set<String> typed = new HashSet<>();

    /** Of forms of which the page has several: by the field and value that tell them apart. */
    private final Map<String, FormValues> several = new HashMap<>();

    /** Every component of a record under its dotted name, below the group if it has a name; maps and lists of rows opened. */
    public FormValues put(String group, Object record) {
        open(group, MAPPER.valueToTree(record));
        return this;
    }

    public FormValues set(String name, @Nullable String value) {
        values.put(name, value == null ? List.of() : List.of(value));
        return this;
    }

    /** What was typed stands before what is stored, and each problem at its field. */
    public FormValues typed(PostedForm form, Refusal refusal) {
        return typed(form.typed(), refusal.problems());
    }

    /** As {@link #typed(PostedForm, Refusal)}. */
    public FormValues typed(Map<String, List<String>> typed, List<Problem> problems) {
        typed.forEach((name, held) -> {
            if (!filled(held).equals(filled(values.getOrDefault(name, List.of())))) {
                this.typed.add(name);
            }
            values.put(name, filled(held));
        });
        problems.forEach(p -> errors.putIfAbsent(p.field(), p.sentence()));
        return this;
    }

    /** What was typed earlier and kept; whether any of it differs from what is stored. */
    public boolean draft(Map<String, List<String>> kept) {
        int before = typed.size();
        typed(kept, List.of());
        return typed.size() > before;
    }

    /**
     * As {@link #draft}, for one of several forms with the same fields.
     *
     * @param about the field that tells it from the others, an equals sign, and what stands in it
     */
    public boolean draftAbout(String about, Map<String, List<String>> kept) {
        return several.computeIfAbsent(about, any -> new FormValues()).draft(kept);
    }

    /** The first value of a field; empty if there is none. */
    public String value(String name) {
        return values.getOrDefault(name, List.of()).stream().findFirst().orElse("");
    }

    /** Whether that option of a field is chosen. */
    public boolean is(String name, @Nullable Object option) {
        return option != null && values.getOrDefault(name, List.of()).contains(option.toString());
    }

    /** What is wrong with a field; empty if nothing is. */
    public String error(String name) {
        return errors.getOrDefault(name, "");
    }

    public boolean wrong(String name) {
        return errors.containsKey(name);
    }

    /** Whether anything was filled in or is wrong in a group, so that a folded part has to be shown open. */
    public boolean touched(String group) {
        return values.entrySet().stream()
                        .anyMatch(e -> e.getKey().startsWith(group + ".")
                                && e.getValue().stream().anyMatch(v -> !v.isBlank()))
                || errors.keySet().stream().anyMatch(k -> k.startsWith(group));
    }

    /** The values for one of several forms with the same fields: these, if the form that was sent said that it was about that entry. */
    public FormValues about(String field, int entry) {
        return about(field, Integer.toString(entry));
    }

    /** As {@link #about(String, int)}. */
    public FormValues about(String field, String value) {
        return is(field, value) ? this : several.getOrDefault(field + "=" + value, new FormValues());
    }

    /**
     * What stands before the id of a field of which the page has several: nothing where it is wrong, so that the words about it
     * lead to that one.
     *
     * @param about tells the field from the others
     */
    public String at(String name, Object about) {
        return wrong(name) ? "" : about + "-";
    }

    /** Whether something was typed into a group that is not stored, or is wrong, so that its answer cannot stand folded. */
    public boolean unsaved(String group) {
        return Stream.concat(typed.stream(), errors.keySet().stream()).anyMatch(name -> name.startsWith(group + "."));
    }

    /** Without the empty value that a form sends beside a tick, so that one taken out is told from one that was never shown. */
    private static List<String> filled(List<String> held) {
        return held.stream().filter(value -> !value.isEmpty()).toList();
    }

    private void open(String name, JsonNode node) {
        if (node.isObject()) {
            node.fields()
                    .forEachRemaining(e -> open(name.isEmpty() ? e.getKey() : name + "." + e.getKey(), e.getValue()));
        } else if (node.isArray() && node.path(0).isObject()) {
            for (int row = 0; row < node.size(); row++) {
                open(name + "[" + row + "]", node.get(row));
            }
        } else if (node.isArray()) {
            List<String> all = new ArrayList<>();
            node.forEach(n -> all.add(n.asText()));
            values.put(name, all);
        } else if (!node.isNull()) {
            values.put(name, List.of(node.asText()));
        }
    }
}
