package org.benchtrail.core.method.verify;

import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.text.FieldChecks;

/** The category's checklist: the state of each item by its place in the list, 0 first. */
public record FunctionChecked(Map<Integer, ItemState> items, String note) implements VerifyFact {
    public FunctionChecked {
        FieldChecks t = new FieldChecks();
        items = items == null ? Map.of() : java.util.Collections.unmodifiableMap(new TreeMap<>(items));
        t.require(!items.isEmpty(), "items", "Answer the items of the checklist.");
        t.require(!items.containsValue(null), "items", "Each item works, is faulty, or does not apply.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }
}
