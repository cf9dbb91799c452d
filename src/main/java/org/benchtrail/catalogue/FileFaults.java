package org.benchtrail.catalogue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.platform.YamlNode;

/** What is wrong with a catalogue file so far, and in which row everything stands. */
final class FileFaults {
    static final double STAND_IN = 1;

    final Map<String, Integer> rows = new HashMap<>();
    private final List<CatalogueFile.Fault> faults = new ArrayList<>();
    private final Set<String> reported = new HashSet<>();
    private final Unknown unknown;

    /** What becomes of a key that this release does not know. */
    enum Unknown {
        /** It is a mistake of whoever wrote the file. */
        IS_A_FAULT,
        /** A later release stored the file. */
        IS_PASSED_OVER
    }

    FileFaults(Unknown unknown) {
        this.unknown = unknown;
    }

    List<CatalogueFile.Fault> faults() {
        return faults;
    }

    /** Whether the value itself could not be read: the rules would only complain about the stand-in. */
    boolean isReported(String field) {
        return reported.contains(field);
    }

    /** Row of an entry, or of the nearest one around it that is in the file. */
    int row(String field) {
        String at = field;
        while (!rows.containsKey(at) && !at.isEmpty()) {
            at = at.substring(0, Math.max(0, Math.max(at.lastIndexOf('.'), at.lastIndexOf('['))));
        }
        return rows.getOrDefault(at, 1);
    }

    void fault(int row, String at, String reason) {
        faults.add(new CatalogueFile.Fault(row, at, reason));
        reported.add(at);
    }

    void unknownKey(int row, String at, String key) {
        if (unknown == Unknown.IS_A_FAULT) {
            fault(row, at, "leave out '" + key + "' or correct its name");
        }
    }

    String scalar(YamlNode node, String at) {
        rows.put(at, node.row());
        if (node.text() == null) {
            fault(node.row(), at, "give a single value here");
            return "";
        }
        return node.text();
    }

    double number(YamlNode node, String at) {
        String text = scalar(node, at);
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            fault(node.row(), at, "give a number, not '" + text + "'");
            return STAND_IN;
        }
    }
}
