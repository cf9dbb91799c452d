package org.benchtrail.ticket.sheet;

import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.form.DrawnForm;

/**
 * A form below the open step that no template shows.
 *
 * @param name of the form
 * @param said what it has recorded in this round
 */
public record DrawnView(String name, DrawnForm form, List<EntryLine> said) {
    static List<DrawnView> all(Viewing viewing) {
        return SheetForms.of(viewing.sheet().step()).stream()
                .flatMap(form -> Stream.ofNullable(form.drawn())
                        .map(drawn -> new DrawnView(form.name(), drawn, said(drawn, viewing))))
                .toList();
    }

    private static List<EntryLine> said(DrawnForm form, Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        return viewing.lines(StepRow.recorded(sheet.step(), sheet.round(), sheet)
                .filter(f -> form.group().kind().isInstance(f.fact()))
                .toList());
    }
}
