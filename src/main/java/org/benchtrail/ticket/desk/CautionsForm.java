package org.benchtrail.ticket.desk;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.ticket.form.FieldGroup;
import org.benchtrail.ticket.form.Posting;

/** The box 'I have taken the precautions' under the cautions of a check or an action. */
public final class CautionsForm {
    /** Followed by the entry that raises the cautions; holds their names, divided by commas. */
    public static final String FIELD = "caution-";

    private CautionsForm() {}

    /** Taken for those entries, as they were typed. */
    public static FieldGroup<CautionsAcknowledged> about(Function<Posting, List<String>> entries) {
        return FieldGroup.special(
                "caution",
                CautionsAcknowledged.class,
                posting -> entries.apply(posting).forEach(e -> taken(posting, e)));
    }

    public static void taken(Posting posting, String entry) {
        if (posting.form().has(FIELD + entry) && entry.matches("\\d{1,9}")) {
            Set<Caution> taken = EnumSet.noneOf(Caution.class);
            for (String name : posting.form().text(FIELD + entry).split(",")) {
                taken.add(Caution.valueOf(name));
            }
            posting.add(new CautionsAcknowledged(Integer.parseInt(entry), taken));
        }
    }
}
