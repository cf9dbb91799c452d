package org.benchtrail.core.method.verify;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
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

    @Override
    public Lasts lasts() {
        return Lasts.UNTIL_WORK;
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        int last = s.sheet().opened().category().functions().size() - 1;
        items.keySet().stream()
                .filter(item -> item < 0 || item > last)
                .findFirst()
                .ifPresent(item -> {
                    throw new Invalid(
                            "items",
                            "The checklist of this category has the items 0 to " + last + ": there is no item " + item
                                    + ".");
                });
        return List.of();
    }
}
