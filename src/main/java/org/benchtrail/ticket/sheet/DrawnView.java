package org.benchtrail.ticket.sheet;

import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Step;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.form.DrawnForm;
import org.benchtrail.ticket.form.SheetForm;

/**
 * A form below the open step that no template shows.
 *
 * @param name of the form
 * @param group of its fields
 * @param said what it has recorded in this round
 */
public record DrawnView(String name, String group, DrawnForm form, List<EntryLine> said) {
    static List<DrawnView> all(Viewing viewing) {
        Step step = viewing.sheet().step();
        return SheetForms.of(step).stream()
                .flatMap(form -> Stream.ofNullable(form.drawn())
                        .map(drawn -> new DrawnView(form.name(), group(form), drawn, said(form, viewing))))
                .toList();
    }

    private static String group(SheetForm form) {
        return form.groups().get(0).name();
    }

    private static List<EntryLine> said(SheetForm form, Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        Class<? extends Fact> kind = form.groups().get(0).kind();
        return viewing.lines(sheet.facts().stream()
                .filter(f -> kind.isInstance(f.fact()) && f.fact().shownUnder() == sheet.step())
                .filter(f -> f.round() == sheet.round())
                .toList());
    }
}
