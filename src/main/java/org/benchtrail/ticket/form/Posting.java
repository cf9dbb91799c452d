package org.benchtrail.ticket.form;

import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.ticket.Act;

/**
 * A form of the job sheet while it is read.
 *
 * @param form what was typed; problems are kept there
 * @param sheet as the form's sender has seen it
 * @param acts what the form asks for so far
 * @param after what it asks for at the step that it leads to
 */
public record Posting(PostedForm form, JobSheet sheet, FormContext context, List<Act> acts, List<Act> after) {

    public void add(Fact fact) {
        acts.add(sheet -> fact);
    }

    public void add(Act act) {
        acts.add(act);
    }

    /** The record of a group becomes a fact; if it is malformed, its problems are kept. */
    public <F extends Fact> void record(String group, Class<F> kind, Map<String, ?> known) {
        form.read(group, kind, known).ifPresent(this::add);
    }
}
