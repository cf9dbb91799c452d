package org.benchtrail.platform.problem;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** A field of a form that could not be taken, kept so that it can be sent again. */
public record TypedField(String name, String value) {
    private static final Set<String> UNTYPED = Set.of("version", "then", "shown");

    /** Every field but the form's token, which is made anew. */
    public static List<TypedField> of(Map<String, List<String>> typed) {
        List<TypedField> fields = new ArrayList<>();
        typed.forEach((name, values) -> {
            if (!name.equals("csrf-token")) {
                values.forEach(value -> fields.add(new TypedField(name, value)));
            }
        });
        return fields;
    }

    /** The name in words; empty for what nobody typed. */
    public String label() {
        if (UNTYPED.contains(name) || name.startsWith("csrf")) {
            return "";
        }
        StringBuilder words = new StringBuilder();
        char before = ' ';
        for (char c : name.toCharArray()) {
            if (Character.isUpperCase(c) && Character.isLowerCase(before)) {
                words.append(' ');
            }
            words.append(c == '.' || c == '-' ? ' ' : c);
            before = c;
        }
        return words.toString().toLowerCase(Locale.ROOT);
    }
}
