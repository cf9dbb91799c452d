package org.benchtrail.core.readin;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * One object of a parsed tree, with the path that leads to it. What is null counts as not there.
 *
 * @param path such as {@code Temperatures[0]}; empty at the root
 */
record TreeNode(String path, Map<?, ?> members) {

    /** @throws Invalid if it is no object */
    static TreeNode of(String path, @Nullable Object value) {
        if (value instanceof Map<?, ?> members) {
            return new TreeNode(path, members);
        }
        throw new Invalid(path.isEmpty() ? "text" : path, "An object in braces is needed here.");
    }

    /** Path of a member. */
    String at(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }

    boolean has(String name) {
        return members.get(name) != null;
    }

    /** Whether the member is there, be it null. */
    boolean names(String name) {
        return members.containsKey(name);
    }

    /** @throws Invalid if it is there and no object */
    Optional<TreeNode> child(String name) {
        return has(name) ? Optional.of(of(at(name), members.get(name))) : Optional.empty();
    }

    /** @throws Invalid if it is there and no list of objects */
    List<TreeNode> list(String name) {
        List<TreeNode> nodes = new ArrayList<>();
        if (has(name)) {
            if (!(members.get(name) instanceof List<?> list)) {
                throw new Invalid(at(name), "A list in brackets is needed here.");
            }
            for (Object entry : list) {
                nodes.add(of(at(name) + "[" + nodes.size() + "]", entry));
            }
        }
        return nodes;
    }

    /** @throws Invalid if it is there and no number */
    @Nullable
    BigDecimal number(String name) {
        Object value = members.get(name);
        if (value == null || value instanceof BigDecimal) {
            return (BigDecimal) value;
        }
        throw new Invalid(at(name), "A number without quotes is needed here, not '" + shown(value) + "'.");
    }

    /** Empty if it is not there. */
    String text(String name) {
        Object value = members.get(name);
        if (value == null || value instanceof String) {
            return value == null ? "" : ((String) value).strip();
        }
        throw new Invalid(at(name), "A text in quotes is needed here, not '" + shown(value) + "'.");
    }

    private static String shown(Object value) {
        if (value instanceof Map || value instanceof List) {
            return "several values";
        }
        // a number is not written out: ten digits can name one of a thousand million
        String text = value instanceof BigDecimal number ? number.toString() : String.valueOf(value);
        return text.length() <= 30 ? text : text.substring(0, 30) + "…";
    }
}
