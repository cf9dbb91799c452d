package org.benchtrail.ticket.form;

import org.benchtrail.ticket.Act;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.core.method.Fact;

/**
 * What was typed into a form of the job sheet. Fields are named after what they become: {@code onset.when} is component
 * {@code when} of the fact in group {@code onset}, {@code changes.answers.HARDWARE} an entry of its map. So one reader serves
 * every form, and a problem names the field that holds it.
 */
public final class SheetForm {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .enable(DeserializationFeature.ACCEPT_SINGLE_VALUE_AS_ARRAY)
            .build();

    private final Map<String, List<String>> typed;
    private final List<Problem> problems = new ArrayList<>();
    private final Known known;

    public SheetForm(Map<String, List<String>> typed, Known known) {
        this.typed = typed;
        this.known = known;
    }

    /**
     * What forms refer to beside the sheet.
     *
     * @param model the causes and findings of the ticket's category; empty if the catalogue has none
     */
    public record Known(Optional<Model> model, LimitLibrary limits) {}

    public Known known() {
        return known;
    }

    /** The names of the fields below a prefix in which something was filled in. */
    public List<String> filled(String prefix) {
        return typed.keySet().stream()
                .filter(name -> name.startsWith(prefix) && has(name))
                .map(name -> name.substring(prefix.length()))
                .sorted()
                .toList();
    }

    public String text(String name) {
        return typed.getOrDefault(name, List.of()).stream()
                .findFirst()
                .map(v -> v.strip().replace("\r\n", "\n"))
                .orElse("");
    }

    public boolean has(String name) {
        return !text(name).isEmpty();
    }

    /** Whether any field of the group was filled in. */
    public boolean given(String group) {
        return typed.entrySet().stream()
                .anyMatch(e -> e.getKey().startsWith(group + ".")
                        && e.getValue().stream().anyMatch(v -> !v.isBlank()));
    }

    /** The fact of a group, if any field of it was filled in. Problems are kept until {@link #done}. */
    public <F extends Fact> void add(List<Act> acts, String group, Class<F> kind) {
        add(acts, group, kind, Map.of());
    }

    /** As {@link #add(List, String, Class)}, with components that the form does not ask for. */
    public <F extends Fact> void add(List<Act> acts, String group, Class<F> kind, Map<String, ?> known) {
        if (given(group)) {
            F fact = read(group, kind, known);
            if (fact != null) {
                acts.add(sheet -> fact);
            }
        }
    }

    /** The fact of a group; null, with the problems kept, if it is malformed. */
    public <F extends Fact> @org.jspecify.annotations.Nullable F read(String group, Class<F> kind, Map<String, ?> known) {
        Map<String, Object> tree = tree(group + ".");
        tree.putAll(known);
        try {
            return MAPPER.convertValue(tree, kind);
        } catch (IllegalArgumentException e) {
            problems.addAll(problems(group, e));
            return null;
        }
    }

    public void refuse(String field, String sentence) {
        problems.add(new Problem(field, sentence));
    }

    /** @throws Invalid with all problems of the form, if there are any */
    public void done() {
        if (!problems.isEmpty()) {
            throw new Invalid(problems);
        }
    }

    /** The filled-in fields below a prefix, as a tree: a second dot opens a map. */
    private Map<String, Object> tree(String prefix) {
        Map<String, Object> tree = new LinkedHashMap<>();
        typed.forEach((name, values) -> {
            List<String> filled =
                    values.stream().map(String::strip).filter(v -> !v.isEmpty()).toList();
            if (name.startsWith(prefix) && !filled.isEmpty()) {
                put(tree, name.substring(prefix.length()), filled);
            }
        });
        return tree;
    }

    @SuppressWarnings("unchecked") // the map below a name is made here and nowhere else
    private static void put(Map<String, Object> tree, String path, List<String> values) {
        int dot = path.indexOf('.');
        if (dot < 0) {
            tree.put(path, values.size() == 1 ? values.get(0) : values);
        } else {
            Map<String, Object> below =
                    (Map<String, Object>) tree.computeIfAbsent(path.substring(0, dot), k -> new LinkedHashMap<>());
            put(below, path.substring(dot + 1), values);
        }
    }

    private static List<Problem> problems(String group, IllegalArgumentException failure) {
        Throwable cause = failure;
        while (cause != null) {
            if (cause instanceof Invalid invalid) {
                return invalid.problems().stream()
                        .map(p -> new Problem(group + "." + p.field(), p.sentence()))
                        .toList();
            }
            if (cause instanceof InvalidFormatException format) {
                return List.of(new Problem(group + "." + path(format), sentence(format)));
            }
            cause = cause.getCause();
        }
        return List.of(new Problem(group, "This could not be read: check what was typed."));
    }

    private static String path(JsonMappingException problem) {
        return problem.getPath().stream()
                .map(JsonMappingException.Reference::getFieldName)
                .filter(java.util.Objects::nonNull)
                .collect(Collectors.joining("."));
    }

    private static String sentence(InvalidFormatException problem) {
        boolean whole = Set.of(int.class, Integer.class, long.class).contains(problem.getTargetType());
        return whole
                ? "Write a whole number here, not '" + problem.getValue() + "'."
                : "'" + problem.getValue() + "' cannot be chosen here.";
    }
}
