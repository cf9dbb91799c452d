package org.benchtrail.ticket.sheet;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.draft.DraftView;
import org.jspecify.annotations.Nullable;

/** Shows the job sheet, by itself or again after a form that was not taken; of a ticket that has ended its record. */
@ApplicationScoped
public class SheetScreen {
    private static final String ANSWERS = "addendum.requirement";

    private final SheetQueries queries;
    private final CurrentActor current;

    SheetScreen(SheetQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    /** A form that cannot be shown stops the server as it starts, before anybody is shown an empty page. */
    void start(@Observes StartupEvent start) {
        SheetForms.ALL.forEach(Objects::requireNonNull);
    }

    @CheckedTemplate(basePath = "ticket/sheet")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance sheet(SheetView v, FormValues fill, Notice notice, @Nullable DraftView draft);

        static native TemplateInstance ended(SheetView v, FormValues fill, Notice notice, @Nullable DraftView draft);

        static native TemplateInstance broken(TicketQueries.Broken b);
    }

    /**
     * The sheet, with what is new on it since that version; of a ticket whose trail tells none, that it is so, and why.
     *
     * @param answers requirement that the form for adding to the papers starts with; any other text is passed over
     */
    Response show(TicketNumber number, int seen, String answers) {
        try {
            SheetQueries.Contents contents = contents(number);
            List<EntryLine> since = seen <= 0 ? List.of() : since(seen, contents.viewing());
            Notice notice = since.isEmpty() ? Notice.NONE : Notice.stale("New on this sheet:", since);
            return Html.ok(page(contents, Map.of(), notice, answers));
        } catch (RecordBroken e) {
            return Html.ok(Templates.broken(queries.broken(number, current.actor())));
        }
    }

    /** Where an act leads: on to the sheet, or back to what was typed if it was refused. */
    public Response after(Outcome outcome, Map<String, List<String>> typed) {
        if (!outcome.refused()) {
            boolean fromToday = typed.getOrDefault("back", List.of()).contains("today");
            return Html.goTo(fromToday ? "/today" : "/tickets/" + outcome.number() + "#step");
        }
        boolean kept = !outcome.recorded().isEmpty();
        String words = kept ? "Your answers are recorded. Before the step can be left:" : "Not yet. First:";
        TemplateInstance page =
                page(contents(outcome.number()), kept ? Map.of() : typed, Notice.unmet(words, outcome.missing()));
        return Refusal.unmet(List.of()).on(page);
    }

    /**
     * The page again, with what was typed and what is wrong with it.
     *
     * @param form its name
     * @param seen version that the sender has seen; 0 if what others did since need not be told
     * @param staleWords what is said if somebody else was quicker
     */
    public TemplateInstance again(
            TicketNumber number,
            String form,
            Map<String, List<String>> typed,
            Refusal refusal,
            int seen,
            String staleWords) {
        SheetQueries.Contents contents = contents(number);
        Notice notice = refusal.isStale()
                ? Notice.stale(staleWords, seen == 0 ? List.of() : since(seen, contents.viewing()))
                : Notice.invalid(refusal.problems(), SheetForms.prefix(form, contents.viewing()));
        return page(contents, typed, notice);
    }

    private SheetQueries.Contents contents(TicketNumber number) {
        return queries.contents(number, current.actor(), current.zone());
    }

    private static TemplateInstance page(
            SheetQueries.Contents contents, Map<String, List<String>> typed, Notice notice) {
        return page(contents, typed, notice, "");
    }

    private static TemplateInstance page(
            SheetQueries.Contents contents, Map<String, List<String>> typed, Notice notice, String answers) {
        JobSheet sheet = contents.viewing().sheet();
        FormValues values = SheetForms.values(sheet, contents.context());
        if (contents.forecast() != null) {
            contents.forecast().fill(values);
        }
        DraftView draft = DraftView.fill(contents.draft(), SheetForms.at(sheet.step()), contents.viewing(), values);
        if (values.value(ANSWERS).isEmpty() && Requirements.of(answers).isPresent()) {
            values.set(ANSWERS, answers);
        }
        values.typed(typed, notice.problems());
        DraftView shown = typed.isEmpty() ? draft : null;
        SheetView view = SheetView.of(contents);
        return view.open()
                ? Templates.sheet(view, values, notice, shown)
                : Templates.ended(view, values, notice, shown);
    }

    private static List<EntryLine> since(int version, Viewing viewing) {
        return viewing.lines(
                viewing.sheet().facts().stream().filter(n -> n.isAfter(version)).toList());
    }
}
