package org.benchtrail.core.method.verify;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * The category's checklist.
 *
 * @param items state of each item by its place in the list, 0 first, as it was answered in earlier times; empty since
 * @param answers state of each item by its text; null where it was answered by places
 */
public record FunctionChecked(
        Map<Integer, ItemState> items,
        @FreeText String note,
        @Later @Nullable Map<String, ItemState> answers) implements VerifyFact {
    public FunctionChecked {
        FieldChecks t = new FieldChecks();
        items = items == null ? Collections.emptyMap() : Collections.unmodifiableMap(new TreeMap<>(items));
        answers = answers == null ? null : Collections.unmodifiableMap(new TreeMap<>(answers));
        t.require(!items.isEmpty() || answers != null, "answers", "Answer the items of the checklist by their texts.");
        t.require(
                !items.containsValue(null) && (answers == null || !answers.containsValue(null)),
                "answers",
                "Each item works, is faulty, or does not apply.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public Lasts lasts() {
        return Lasts.UNTIL_WORK;
    }

    public FunctionChecked(Map<String, ItemState> answers, String note) {
        this(Map.of(), note, answers);
    }

    /** The answers by text, for that checklist. */
    public Map<String, ItemState> byText(List<String> checklist) {
        if (answers != null) {
            return answers;
        }
        Map<String, ItemState> byText = new HashMap<>();
        items.forEach((place, state) -> {
            if (place >= 0 && place < checklist.size()) {
                byText.put(checklist.get(place), state);
            }
        });
        return byText;
    }

    /** It is answered by its texts, so that nobody answers what he has not read. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        List<String> checklist = s.sheet().checkedAs().functions();
        if (answers == null || !items.isEmpty()) {
            throw new Invalid("answers", "Answer the checklist by its texts: " + String.join("; ", checklist) + ".");
        }
        answers.keySet().stream()
                .filter(text -> !checklist.contains(text))
                .findFirst()
                .ifPresent(text -> {
                    throw new Invalid(
                            "answers",
                            "'" + text + "' is not on the checklist of this category: " + String.join("; ", checklist)
                                    + ".");
                });
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        Map<String, ItemState> all = byText(List.of());
        return Told.noted(Told.list(all.entrySet(), e -> e.getKey() + ": " + Told.plain(e.getValue())), note);
    }
}
