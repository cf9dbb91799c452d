package org.benchtrail.catalogue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.CauseCategory;

/**
 * An entry that differs between two practice catalogues.
 *
 * @param entry path of the entry by ids, such as {@code power / causes / psu / weight}
 * @param before empty if it is new
 * @param after empty if it is gone
 */
public record EntryChange(String entry, String before, String after) {
    private static final ObjectMapper TREES = new ObjectMapper();
    private static final List<String> NAMES = List.of("id", "finding");

    static List<EntryChange> between(Catalogue before, Catalogue after) {
        Map<String, String> old = flat(before);
        Map<String, String> now = flat(after);
        TreeSet<String> entries = new TreeSet<>(old.keySet());
        entries.addAll(now.keySet());
        List<EntryChange> changes = new ArrayList<>();
        for (String entry : entries) {
            String was = old.getOrDefault(entry, "");
            String is = now.getOrDefault(entry, "");
            if (!was.equals(is)) {
                changes.add(new EntryChange(entry, was, is));
            }
        }
        return changes;
    }

    private static Map<String, String> flat(Catalogue catalogue) {
        Map<String, String> flat = new TreeMap<>();
        for (CauseCategory c : catalogue.categories()) {
            flatten(TREES.valueToTree(c), c.id(), flat);
        }
        return flat;
    }

    private static void flatten(JsonNode node, String at, Map<String, String> into) {
        if (node.isObject()) {
            node.fields().forEachRemaining(f -> flatten(f.getValue(), at + " / " + f.getKey(), into));
        } else if (node.isArray()) {
            for (int k = 0; k < node.size(); k++) {
                flatten(node.get(k), at + " / " + name(node.get(k), k), into);
            }
        } else if (!node.isNull()) {
            into.put(at, node.asText());
        }
    }

    /** Entries are known by their ids, so that one put in between does not make all later ones look changed. */
    private static String name(JsonNode item, int place) {
        return NAMES.stream()
                .filter(item::has)
                .map(key -> item.get(key).asText())
                .findFirst()
                .orElse(String.valueOf(place + 1));
    }
}
