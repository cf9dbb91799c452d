package org.benchtrail.ticket.entry;

import static org.benchtrail.ticket.form.FieldGroup.required;
import static org.benchtrail.ticket.form.FieldGroup.special;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;

/** An entry struck out, or put right by its own fields again, in the group {@code new}. */
public final class CorrectionForms {
    static final String NEW = "new";

    static final SheetForm STRIKE = SheetForm.of("strike", required("strike", Corrected.class));

    static final SheetForm CORRECT = SheetForm.of(
                    "correct", special("correct", Corrected.class, CorrectionForms::correct))
            .fields(NEW + ".");

    public static final List<SheetForm> ALL = List.of(STRIKE, CORRECT);

    private CorrectionForms() {}

    private static void correct(Posting posting) {
        OptionalInt entry = posting.form().number("correct.entry");
        if (entry.isEmpty()) {
            posting.form().refuse("correct.entry", "Say which entry is corrected.");
            return;
        }
        Fact old = posting.sheet()
                .at(entry.getAsInt(), Fact.class, "correct.entry")
                .fact();
        posting.form()
                .read(NEW, old.getClass())
                .ifPresent(replacement -> posting.form()
                        .read("correct", Corrected.class, Map.of("entry", entry.getAsInt()))
                        .ifPresent(c -> posting.add(new Corrected(entry.getAsInt(), c.reason(), replacement))));
    }
}
