package org.benchtrail.ticket.sheet;

import java.util.List;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.Missing;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.form.SheetForm;

/**
 * What the page says at its head after a request that did not end in a plain success.
 *
 * @param missing what has to be met first
 * @param problems what was typed and has to be put right
 * @param at what stands before the ids of the fields of the form that was sent
 * @param since what others did meanwhile
 */
public record Notice(String words, List<Missing> missing, List<Problem> problems, String at, List<EntryLine> since) {
    public static final Notice NONE = new Notice("", List.of(), List.of(), "", List.of());

    /** Somebody else was quicker. */
    public static Notice stale(String words, List<EntryLine> since) {
        return new Notice(words, List.of(), List.of(), "", since);
    }

    public static Notice invalid(List<Problem> problems, String at) {
        return new Notice("Nothing is saved yet. Correct this:", List.of(), problems, at, List.of());
    }

    public static Notice unmet(String words, List<Missing> missing) {
        return new Notice(words, missing, List.of(), "", List.of());
    }

    /** Whether that problem has a field that its words can lead to; what is wrong with a form as a whole has none. */
    public boolean leads(Problem problem) {
        return !problem.field().equals(SheetForm.WHOLE);
    }

    /** Whether it stands above the sheet: what a gate lacks stands in the gate strip instead. */
    public boolean above(boolean gated) {
        return !words.isEmpty() && !(gated && !missing.isEmpty());
    }
}
