package org.benchtrail.platform.form;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.platform.problem.Faults;
import org.jboss.resteasy.reactive.server.multipart.MultipartFormDataInput;
import org.jspecify.annotations.Nullable;

/** What was typed into a form, read into records; see the package for how fields are named. Problems are kept until {@link #done}. */
public final class PostedForm {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .enable(DeserializationFeature.ACCEPT_SINGLE_VALUE_AS_ARRAY)
            .build();

    private final Map<String, List<String>> typed = new LinkedHashMap<>();
    private final List<Problem> problems = new ArrayList<>();

    private final Map<String, PostedFile> files = new HashMap<>();

    public PostedForm(Map<String, ? extends List<String>> typed) {
        typed.forEach((name, values) ->
                this.typed.put(name, values.stream().filter(Objects::nonNull).toList()));
    }

    /** A form that may carry files. */
    public static PostedForm of(MultipartFormDataInput sent) {
        Map<String, List<String>> typed = new LinkedHashMap<>();
        Map<String, PostedFile> files = new HashMap<>();
        sent.getValues()
                .forEach((name, values) -> values.forEach(value -> {
                    if (value.isFileItem()) {
                        files.putIfAbsent(name, PostedFile.of(value));
                    } else {
                        typed.computeIfAbsent(name, n -> new ArrayList<>()).add(value.getValue());
                    }
                }));
        PostedForm form = new PostedForm(typed);
        form.files.putAll(files);
        return form;
    }

    /** The file that was chosen in a field; empty if none was, or it is empty. */
    public Optional<PostedFile> file(String name) {
        return Optional.ofNullable(files.get(name)).filter(file -> file.size() > 0);
    }

    /** Every field by its name, as it was sent; not the files. */
    public Map<String, List<String>> typed() {
        return typed;
    }

    /** The first value of a field, trimmed, line ends as one {@code \n}; empty if there is none. */
    public String text(String name) {
        return asSent(name).strip().replace("\r\n", "\n");
    }

    /** The first value of a field as it was sent, such as a password; empty if there is none. */
    public String asSent(String name) {
        return typed.getOrDefault(name, List.of()).stream()
                .filter(value -> !value.isEmpty())
                .findFirst()
                .orElse("");
    }

    /** All values of a field that are not blank, trimmed. */
    public List<String> all(String name) {
        return notBlank(typed.getOrDefault(name, List.of()));
    }

    public boolean has(String name) {
        return !text(name).isEmpty();
    }

    /** Whether any field of the group was filled in. */
    public boolean given(String group) {
        return typed.keySet().stream()
                .anyMatch(name -> name.startsWith(group + ".") && !all(name).isEmpty());
    }

    /** The names of the fields below a prefix in which something was filled in, without the prefix, in order. */
    public List<String> filled(String prefix) {
        return typed.keySet().stream()
                .filter(name -> name.startsWith(prefix) && has(name))
                .map(name -> name.substring(prefix.length()))
                .sorted()
                .toList();
    }

    /**
     * The numbers of a list's rows, ascending: those in which something was filled in, such as {@code loads[2].watts}, and those
     * that a field such as {@code loads[2]} names by itself.
     */
    public List<Integer> rows(String list) {
        Pattern row = Pattern.compile(Pattern.quote(list) + "\\[(\\d{1,6})](\\..*)?");
        return typed.keySet().stream()
                .map(row::matcher)
                .filter(Matcher::matches)
                .filter(m -> m.group(2) == null || has(m.group()))
                .map(m -> Integer.valueOf(m.group(1)))
                .distinct()
                .sorted()
                .toList();
    }

    /** The whole number in a field, 0 to 999,999,999; empty if it holds none. */
    public OptionalInt number(String name) {
        String digits = text(name);
        return digits.matches("\\d{1,9}") ? OptionalInt.of(Integer.parseInt(digits)) : OptionalInt.empty();
    }

    /** The version that the page showed, in the field of that name; 0, which is never current, if it is missing. */
    public int version() {
        return number("version").orElse(0);
    }

    /**
     * The record that the whole form is; fields that are none of its components are left alone.
     *
     * @throws Invalid naming the fields that have to be put right
     */
    public <T extends Record> T read(Class<T> type) {
        Map<String, Object> tree = tree("");
        tree.keySet().retainAll(names(type));
        Optional<T> read = convert("", type, tree);
        done();
        return read.orElseThrow();
    }

    /** The record of a group; empty, with the problems kept, if it is malformed. */
    public <T> Optional<T> read(String group, Class<T> type) {
        return read(group, type, Map.of());
    }

    /** As {@link #read(String, Class)}, with components that the form does not ask for. */
    public <T> Optional<T> read(String group, Class<T> type, Map<String, ?> known) {
        Map<String, Object> tree = tree(group + ".");
        tree.putAll(known);
        return convert(group, type, tree);
    }

    /** The record of a group in which something was filled in; empty if nothing was, or it is malformed. */
    public <T> Optional<T> optional(String group, Class<T> type) {
        return optional(group, type, Map.of());
    }

    /** As {@link #optional(String, Class)}, with components that the form does not ask for. */
    public <T> Optional<T> optional(String group, Class<T> type, Map<String, ?> known) {
        return given(group) ? read(group, type, known) : Optional.empty();
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

    private <T> Optional<T> convert(String group, Class<T> type, Map<String, Object> tree) {
        addEmpty(type, tree);
        try {
            return Optional.of(MAPPER.convertValue(tree, type));
        } catch (IllegalArgumentException e) {
            problems.addAll(Faults.ofForm(e, group));
            return Optional.empty();
        }
    }

    private static List<String> names(Class<?> type) {
        return Stream.of(type.getRecordComponents())
                .map(RecordComponent::getName)
                .toList();
    }

    /** A browser leaves out what is not filled in or ticked: a text or a list that has to be there is empty then. */
    private static void addEmpty(Class<?> type, Map<String, Object> tree) {
        if (!type.isRecord()) {
            return;
        }
        for (RecordComponent component : type.getRecordComponents()) {
            boolean nullable = component.getAnnotatedType().isAnnotationPresent(Nullable.class);
            if (!nullable && component.getType() == String.class) {
                tree.putIfAbsent(component.getName(), "");
            } else if (!nullable && Collection.class.isAssignableFrom(component.getType())) {
                tree.putIfAbsent(component.getName(), List.of());
            }
        }
    }

    /** The filled-in fields below a prefix, as a tree: a second dot opens a map. */
    private Map<String, Object> tree(String prefix) {
        Map<String, Object> tree = new LinkedHashMap<>();
        typed.forEach((name, values) -> {
            List<String> filled = notBlank(values);
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

    private static List<String> notBlank(List<String> values) {
        return values.stream().map(String::strip).filter(v -> !v.isEmpty()).toList();
    }
}
