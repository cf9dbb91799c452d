package org.benchtrail.ticket.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.form.SheetForm;
import org.jspecify.annotations.Nullable;

/**
 * That there is a draft, for the page that shows it in its fields.
 *
 * @param saved when something was last typed
 * @param elsewhere what was typed into forms that the page does not have any more
 */
public record DraftView(String saved, List<String> elsewhere) {

    /**
     * Puts the draft into the fields of the page; null if nothing of it differs from what is stored.
     *
     * @param shown whether the page has that form, by its name
     */
    public static @Nullable DraftView fill(TypedDraft draft, Set<String> shown, Viewing viewing, FormValues values) {
        List<String> elsewhere = new ArrayList<>();
        boolean differs = false;
        for (Map.Entry<String, Map<String, List<String>>> form : draft.forms().entrySet()) {
            if (shown.contains(SheetForm.nameOf(form.getKey()))) {
                differs |= SheetForm.aboutOf(form.getKey())
                        .map(about -> values.draftAbout(about, form.getValue()))
                        .orElseGet(() -> values.draft(form.getValue()));
            } else {
                form.getValue()
                        .values()
                        .forEach(held ->
                                held.stream().filter(value -> !value.isBlank()).forEach(elsewhere::add));
            }
        }
        return differs || !elsewhere.isEmpty() ? new DraftView(viewing.time(draft.saved()), elsewhere) : null;
    }
}
