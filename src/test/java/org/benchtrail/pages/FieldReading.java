package org.benchtrail.pages;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What the programs of a package read from forms that they take as a whole, as their source says it: {@code "onset",
 * OnsetRecorded.class} reads every component of that record from fields {@code onset.…}, {@code read(Proposed.class)} from fields
 * without a group, {@code text("then")} one field, and {@code text("note")} beside {@code case "flag" ->} the field {@code flag.note}.
 * Where a name goes on with something that only a request knows, it has a star.
 */
final class FieldReading {
    private static final Pattern GROUP = Pattern.compile("\"([a-z-]+)\"( \\+ [^,;]+)?,\\s*(?:\\w+\\.)*(\\w+)\\.class");
    private static final Pattern GROUP_IN_VARIABLE = Pattern.compile("String (\\w+) = \"([a-z-]+)\" \\+ ");
    private static final Pattern NO_GROUP = Pattern.compile("\\bread\\((?:\\w+\\.)*(\\w+)\\.class\\)");
    private static final Pattern NAME = Pattern.compile(
            "\\b(?:text|has|all|asSent|number|file|getFirst|getOrDefault|taken|filled)\\((?:\\w+, )?\"([\\w.-]+)\"( \\+)?");
    private static final Pattern CONSTANT = Pattern.compile("static final String \\w+ = \"([a-z-]+)\";");
    private static final Pattern ACT = Pattern.compile("case \"([a-z-]+)\" ->");
    private static final Pattern RECORD = Pattern.compile("\\brecord (\\w+)[<(]");

    private static final Map<String, List<Class<?>>> RECORDS = records();

    private final Map<String, Set<Class<?>>> groups = new HashMap<>();
    private final Set<String> names = new HashSet<>();
    private final Set<String> acts = new HashSet<>();

    FieldReading(String folder) {
        Sources.programs().forEach((file, text) -> {
            if (file.startsWith(folder) || file.startsWith("org/benchtrail/platform/form/")) {
                add(text);
            }
        });
    }

    private void add(String text) {
        GROUP.matcher(text)
                .results()
                .forEach(m -> group(m.group(2) == null ? m.group(1) : m.group(1) + "*", m.group(3)));
        NO_GROUP.matcher(text).results().forEach(m -> group("", m.group(1)));
        CONSTANT.matcher(text).results().forEach(m -> names.add(m.group(1)));
        ACT.matcher(text).results().forEach(m -> acts.add(m.group(1)));
        NAME.matcher(text).results().forEach(m -> names.add(m.group(2) == null ? m.group(1) : m.group(1) + "*"));
        Matcher variable = GROUP_IN_VARIABLE.matcher(text);
        while (variable.find()) {
            Pattern use = Pattern.compile("\\b" + variable.group(1) + ",\\s*(?:\\w+\\.)*(\\w+)\\.class");
            Matcher used = use.matcher(text);
            if (used.find(variable.end())) {
                group(variable.group(2) + "*", used.group(1));
            }
        }
    }

    private void group(String name, String type) {
        groups.computeIfAbsent(name, n -> new HashSet<>()).addAll(RECORDS.getOrDefault(type, List.of()));
    }

    boolean reads(String field) {
        int dot = field.indexOf('.');
        String group = dot < 0 ? "" : field.substring(0, dot);
        return names.contains(field)
                || (acts.contains(group) && names.contains(field.substring(dot + 1)))
                || groups.getOrDefault(group, Set.of()).stream()
                        .anyMatch(type -> resolves(type, field.substring(dot + 1)));
    }

    /** Whether the rest of a name is a component of the record, or lies in a component that is a map or a record. */
    private static boolean resolves(Class<?> type, String path) {
        int dot = path.indexOf('.');
        String name = dot < 0 ? path : path.substring(0, dot);
        for (RecordComponent component : type.getRecordComponents()) {
            if (component.getName().equals(name)) {
                return dot < 0
                        || Map.class.isAssignableFrom(component.getType())
                        || (component.getType().isRecord() && resolves(component.getType(), path.substring(dot + 1)));
            }
        }
        return false;
    }

    private static Map<String, List<Class<?>>> records() {
        Map<String, List<Class<?>>> found = new HashMap<>();
        Sources.programs().forEach((file, text) -> {
            String outer = file.replace(".java", "").replace('/', '.');
            RECORD.matcher(text)
                    .results()
                    .map(m -> m.group(1))
                    .forEach(name -> Stream.of(outer, outer + "$" + name)
                            .filter(n -> n.endsWith("." + name) || n.endsWith("$" + name))
                            .forEach(n -> load(n, found.computeIfAbsent(name, k -> new ArrayList<>()))));
        });
        return found;
    }

    private static void load(String name, List<Class<?>> into) {
        try {
            Class<?> type = Class.forName(name, false, FieldReading.class.getClassLoader());
            if (type.isRecord()) {
                into.add(type);
            }
        } catch (ClassNotFoundException e) {
            // a record of a record, which no form is read into
        }
    }
}
