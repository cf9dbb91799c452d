package org.benchtrail.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import org.benchtrail.platform.YamlNode;
import org.jspecify.annotations.Nullable;

/** A map of a catalogue file, read key by key; keys nobody asked for are mistakes. */
final class EntryReader {
    final String at;
    private final FileFaults file;
    private final Map<String, YamlNode> fields;
    private final int row;

    EntryReader(FileFaults file, YamlNode node, String at, Set<String> keys) {
        this.file = file;
        this.at = at;
        this.row = node.row();
        file.rows.put(at, node.row());
        if (node.fields() == null) {
            file.fault(node.row(), at, "give keys with values here");
        }
        fields = node.fields() == null ? Map.of() : node.fields();
        fields.forEach((key, value) -> {
            file.rows.put(path(key), value.row());
            if (!keys.contains(key)) {
                file.unknownKey(value.row(), path(key), key);
            }
        });
    }

    String path(String key) {
        return at.isEmpty() ? key : at + "." + key;
    }

    @Nullable
    YamlNode find(String key) {
        YamlNode node = fields.get(key);
        return node == null || node.isEmpty() ? null : node;
    }

    <T> T missing(String key, T standIn) {
        file.fault(row, path(key), "add '" + key + "'");
        return standIn;
    }

    String text(String key) {
        YamlNode node = find(key);
        return node == null ? missing(key, "") : file.scalar(node, path(key));
    }

    String text(String key, String otherwise) {
        YamlNode node = find(key);
        return node == null ? otherwise : file.scalar(node, path(key));
    }

    double number(String key) {
        return find(key) == null ? missing(key, FileFaults.STAND_IN) : number(key, FileFaults.STAND_IN);
    }

    double number(String key, double otherwise) {
        YamlNode node = find(key);
        return node == null ? otherwise : file.number(node, path(key));
    }

    @Nullable
    Double optional(String key) {
        return find(key) == null ? null : (Double) number(key, FileFaults.STAND_IN);
    }

    boolean flag(String key, boolean otherwise) {
        String text = text(key, Boolean.toString(otherwise));
        if (!Set.of("true", "false").contains(text)) {
            file.fault(file.row(path(key)), path(key), "write true or false");
        }
        return text.equals("true");
    }

    <E extends Enum<E>> E word(String key, Class<E> type, @Nullable E otherwise) {
        if (find(key) == null) {
            return otherwise == null ? missing(key, type.getEnumConstants()[0]) : otherwise;
        }
        return constant(text(key), path(key), type);
    }

    /** A set of words; empty if it is left out. */
    <E extends Enum<E>> Set<E> words(String key, Class<E> type) {
        return Set.copyOf(list(key, (node, here) -> constant(file.scalar(node, here), here, type)));
    }

    private <E extends Enum<E>> E constant(String word, String where, Class<E> type) {
        for (E e : type.getEnumConstants()) {
            if (e.name().toLowerCase(Locale.ROOT).replace('_', '-').equals(word)
                    || e.name().equals(word)) {
                return e;
            }
        }
        file.fault(file.row(where), where, "choose another word than '" + word + "'");
        return type.getEnumConstants()[0];
    }

    List<String> texts(String key) {
        return list(key, file::scalar);
    }

    <T> List<T> list(String key, BiFunction<YamlNode, String, T> each) {
        YamlNode node = find(key);
        if (node == null) {
            return List.of();
        }
        if (node.items() == null) {
            file.fault(node.row(), path(key), "give a list here");
            return List.of();
        }
        List<T> all = new ArrayList<>();
        for (int k = 0; k < node.items().size(); k++) {
            all.add(each.apply(node.items().get(k), path(key) + "[" + k + "]"));
        }
        return all;
    }

    Map<String, YamlNode> map(String key) {
        YamlNode node = find(key);
        if (node != null && node.fields() == null) {
            file.fault(node.row(), path(key), "give keys with values here");
        }
        return node == null || node.fields() == null ? Map.of() : node.fields();
    }
}
