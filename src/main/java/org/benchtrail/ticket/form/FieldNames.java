package org.benchtrail.ticket.form;

import io.quarkus.qute.TemplateExtension;

/** Names of fields that hold a key or the number of an entry, as {@code field:about('settle', 12, 'note')} in templates. */
@TemplateExtension(namespace = "field")
final class FieldNames {
    private FieldNames() {}

    /** A key of a component that is a map: {@code hazards.present.SMOKE}. */
    static String key(String component, String key) {
        return component + "." + key;
    }

    /** A component of a group that is there once for each of some entries: {@code settle-12.note}. */
    static String about(String group, int entry, String component) {
        return group + "-" + entry + "." + component;
    }
}
